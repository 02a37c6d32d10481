import type { EventKind } from '#core/marks/event-kind';
import { emptyScene, type FollowedRun, type Posture, type Swim } from '#core/swim-file/swim-schema';
import type { ClipClock } from '#core/timeline/clip-clock';
import { recordFromTable } from '#core/timeline/frame-times-record';
import type { Truth } from '../../../sample-clips/truth-schema';
import { aSwim } from '../../shared-core/swim-file/a-swim';

/** What is known of the camera: its path as it was followed, and things that stand still, marked by a drawn coach. */
export interface SeenCamera {
  readonly path: Swim['cameraPath'];
  readonly still: Swim['scene']['still'];
}
const cameraNotLookedAt: SeenCamera = { path: [], still: [] };

/** The swim as it stands in the app once the points are followed: scene set from the truth, nothing marked. */
export function followedSwim(
  truth: Truth,
  width: number,
  height: number,
  arms: 'stroking' | 'stretched',
  postures: readonly Posture[],
  followed: readonly FollowedRun[],
  camera: SeenCamera = cameraNotLookedAt,
): { readonly swim: Swim; readonly clock: ClipClock } {
  const { starts, ticksPerSecond } = truth.frameTimes;
  const gap = (starts.at(-1) ?? 0) - (starts.at(-2) ?? 0);
  const table = { starts, ticksPerSecond, endTick: (starts.at(-1) ?? 0) + gap };
  const base = aSwim();
  const metres = 2;
  const swim: Swim = {
    ...base,
    clip: { ...base.clip, width, height, frameTimes: recordFromTable(table) },
    card: { ...base.card, aids: [], arms, view: 'side' },
    scene: {
      ...emptyScene,
      travel: truth.travel,
      surface: truth.surface,
      still: [...camera.still],
      scale: {
        line: { a: { x: 100, y: 600 }, b: { x: 100 + metres / truth.metresPerPixel, y: 600 } },
        metres,
        metresSd: 0,
        preset: null,
        frame: 0,
      },
    },
    events: [],
    postures: [...postures],
    followed: followed.map((run) => ({ ...run, points: [...run.points] })),
    cameraPath: [...camera.path],
    dismissed: [],
  };
  return { swim, clock: { table, slowdown: truth.slowdown } };
}

/** A moment marked between frames. */
export const kickMark = (
  id: string,
  kind: EventKind,
  frame: number,
  frames: number,
  sdSeconds: number,
): Swim['events'][number] => ({
  id,
  kind,
  frame,
  hand: null,
  breathTo: null,
  metres: null,
  from: 'proposal',
  refined: { frames, sdSeconds },
});
