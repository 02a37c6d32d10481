import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import { noTags } from '#core/swim-file/condition-tags';
import type { SwimCard } from '#core/swim-file/swim-schema';

/** A card as the sample squad has them; what a test is about is said in `change`. */
export const aCard = (change: Partial<SwimCard> = {}): SwimCard => ({
  swimmerId: null,
  swimmerName: '',
  date: '2026-05-14',
  stroke: 'butterfly',
  drill: '',
  arms: 'stroking',
  sideUp: 'front',
  aids: [],
  effort: null,
  distanceMetres: null,
  view: 'side',
  conditions: noTags,
  note: '',
  invented: true,
  ...change,
});

export const aSummary = (
  id: string,
  card: Partial<SwimCard> = {},
  change: Partial<SwimSummary> = {},
): SwimSummary => ({
  id,
  revision: '0'.repeat(64),
  changedAt: '2026-05-14T10:00:00.000Z',
  card: aCard(card),
  clip: {
    originalName: `${id}.mp4`,
    width: 1280,
    height: 720,
    frames: 250,
    seconds: 4.2,
    slowdown: 1,
    inside: true,
    fingerprint: { bytes: 1000, edgesSha256: '0'.repeat(64) },
  },
  copies: 0,
  eventCount: 0,
  postureCount: 0,
  seen: null,
  hasThumbnail: false,
  clipStatus: 'present',
  headline: [],
  ...change,
});
