import type { ArrivedClip } from '#core/host-contract/operations/clip-operations';
import { emptyScene, swimFileVersion, type Swim, type SwimCard } from '#core/swim-file/swim-schema';
import { recordFromTable } from '#core/timeline/frame-times-record';
import type { ClipFacts } from '../video/frame-source';

interface Origin {
  readonly id: string;
  readonly now: string;
  readonly card: SwimCard;
  readonly facts: ClipFacts;
  readonly slowdown: Swim['clip']['slowdown'];
  readonly clip: ArrivedClip;
  readonly originalName: string;
}

/** A swim without marks, from a clip's facts and its card. The host says where the clip lies. */
export function newSwim({ id, now, card, facts, slowdown, clip, originalName }: Origin): Swim {
  return {
    format: 'submark-swim',
    version: swimFileVersion,
    id,
    createdAt: now,
    changedAt: now,
    clip: {
      place: { kind: 'inside', name: clip.name },
      originalName,
      fingerprint: clip.fingerprint,
      track: facts.track === 1 ? null : facts.track,
      fields: facts.fields,
      container: facts.container,
      codec: facts.codec,
      width: facts.width,
      height: facts.height,
      rotation: facts.rotation,
      frameTimes: recordFromTable(facts.table),
      slowdown,
    },
    card,
    scene: emptyScene,
    events: [],
    postures: [],
    followed: [],
    seen: [],
    cameraPath: [],
    dismissed: [],
  };
}
