import { noTags } from '#core/swim-file/condition-tags';
import {
  emptyScene,
  type EventMark,
  plainMark,
  type Swim,
  swimFileVersion,
} from '#core/swim-file/swim-schema';

/** A small invented swim: 100 frames at 50 a second, one kick top and one bottom marked. */
export function aSwim(change: Partial<Swim> = {}): Swim {
  return {
    format: 'submark-swim',
    version: swimFileVersion,
    id: 'swim-1',
    createdAt: '2024-05-14T09:00:00.000Z',
    changedAt: '2024-05-14T09:00:00.000Z',
    clip: {
      place: { kind: 'inside', name: 'clip.mp4' },
      originalName: 'clip.mp4',
      fingerprint: { bytes: 10, edgesSha256: 'a'.repeat(64) },
      track: null,
      fields: false,
      container: 'mp4',
      codec: 'avc',
      width: 1280,
      height: 720,
      rotation: 0,
      frameTimes: { ticksPerSecond: 50, firstTick: 0, gaps: [[1, 100]] },
      slowdown: { factor: 1, source: 'file-tag' },
    },
    card: {
      swimmerId: null,
      swimmerName: 'Pip',
      date: '2024-05-14',
      stroke: 'butterfly',
      drill: '',
      arms: 'stroking',
      sideUp: 'front',
      aids: [],
      effort: 'steady',
      distanceMetres: 25,
      view: 'side',
      conditions: noTags,
      note: '',
      invented: true,
    },
    scene: { ...emptyScene, travel: 'right' },
    events: [aMark('top-1', 'kick-top', 20), aMark('bottom-1', 'kick-bottom', 32)],
    postures: [],
    followed: [],
    seen: [],
    cameraPath: [],
    dismissed: [],
    ...change,
  };
}

export function aMark(id: string, kind: EventMark['kind'], frame: number): EventMark {
  return { id, kind, frame, ...plainMark };
}
