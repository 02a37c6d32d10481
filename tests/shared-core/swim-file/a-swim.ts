import { noTags } from '#core/swim-file/condition-tags';
import { emptyScene, plainMark, type Swim, swimFileVersion } from '#core/swim-file/swim-schema';

/** A small whole swim with something in every place; an invented swimmer. */
export function aSwim(change: Partial<Swim> = {}): Swim {
  return {
    format: 'submark-swim',
    version: swimFileVersion,
    id: 'swim-1',
    createdAt: '2026-05-01T10:00:00.000Z',
    changedAt: '2026-05-01T10:05:00.000Z',
    clip: {
      place: { kind: 'inside', name: 'clip.mp4' },
      originalName: 'clip.mp4',
      fingerprint: { bytes: 11, edgesSha256: 'a'.repeat(64) },
      track: null,
      fields: false,
      container: 'MP4',
      codec: 'avc',
      width: 640,
      height: 360,
      rotation: 0,
      frameTimes: { ticksPerSecond: 60_000, firstTick: 0, gaps: [[1000, 120]] },
      slowdown: { factor: 1, source: 'assumed' },
    },
    card: {
      swimmerId: null,
      swimmerName: 'Invented Swimmer',
      date: '2026-05-01',
      stroke: 'butterfly',
      drill: '',
      arms: 'stroking',
      sideUp: 'front',
      aids: ['fins'],
      effort: 'full',
      distanceMetres: 25,
      view: 'side',
      conditions: noTags,
      note: 'Ünïcode “quotes” and a \\ stay as they are',
      invented: true,
    },
    scene: {
      ...emptyScene,
      travel: 'right',
      level: { a: { x: 0, y: 100 }, b: { x: 640, y: 101.5 } },
      surface: null,
      scale: {
        line: { a: { x: 10, y: 10 }, b: { x: 110, y: 10 } },
        metres: 2,
        metresSd: 0.02,
        preset: null,
        frame: 3,
      },
    },
    events: [
      { id: 'e1', kind: 'entry', frame: 10, ...plainMark },
      { id: 'e2', kind: 'kick-top', frame: 12, ...plainMark },
      { id: 'e3', kind: 'kick-bottom', frame: 30, ...plainMark },
    ],
    postures: [
      { frame: 12, points: { hip: { x: 320, y: 150 }, toe: { x: 200, y: 160.25 } }, hidden: ['ear'] },
    ],
    followed: [],
    seen: [],
    cameraPath: [],
    dismissed: [],
    ...change,
  };
}
