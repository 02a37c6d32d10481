import type { LandmarkName } from '../marks/landmark';
import { heightAboveSurface } from '../scene/surface-line';
import type { EventKind } from '../marks/event-kind';
import type { Swim } from '../swim-file/swim-schema';
import { armLandmarks } from './limb';

/** A moment that is marked, or that the traces speak for. */
interface Moment {
  readonly kind: EventKind;
  readonly frame: number;
}

/**
 * Where an arm is over the water, so that no picture under water shows it and nothing is asked of it: between the hands' way out and
 * their next way in, and wherever the arm's own point, marked or followed, lies over the surface line.
 *
 * @param moments marked ones, and those the traces speak for
 */
export function overSurface(
  swim: Pick<Swim, 'scene' | 'followed'>,
  moments: readonly Moment[],
): (landmark: LandmarkName, frame: number) => boolean {
  const framesOf = (wanted: EventKind): readonly number[] =>
    moments.flatMap(({ kind, frame }) => (kind === wanted ? [frame] : [])).sort((a, b) => a - b);
  const entries = framesOf('entry');
  const recoveries = framesOf('exit').flatMap((out) => {
    const back = entries.find((each) => each > out);
    return back === undefined ? [] : [{ out, back }];
  });
  const above = new Map<LandmarkName, Set<number>>();
  for (const { landmark, frame, points } of swim.scene.surface ? swim.followed : []) {
    if (!armLandmarks.has(landmark)) continue;
    const own = above.get(landmark) ?? new Set<number>();
    above.set(landmark, own);
    points.forEach(([x, y], i) => {
      const height = heightAboveSurface(swim.scene, { x, y });
      if (height && height.pixels > 0) own.add(frame + i);
    });
  }
  return (landmark, frame) =>
    armLandmarks.has(landmark) &&
    (recoveries.some(({ out, back }) => frame > out && frame < back) ||
      (above.get(landmark)?.has(frame) ?? false));
}
