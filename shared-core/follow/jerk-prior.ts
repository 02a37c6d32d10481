import type { LandmarkName } from '../marks/landmark';
import { addBanded, type BandedMatrix } from './banded-solver';

/** When a picture was taken, and where its first pixel lies in still water. */
export interface PlacedPicture {
  readonly time: number;
  readonly originX: number;
  readonly originY: number;
}

/** Change of acceleration is given for this interval: over a longer one it evens out. */
const usualInterval = 1 / 60;

/**
 * Adds how a body moves to the normal equations: each four pictures in a row tell a change of acceleration (the third
 * divided difference, six times), which is about zero give or take `jerkSd` (px/s³ over a sixtieth of a second; white, so
 * that over longer steps it falls with the root of the interval).
 */
export function addJerk(
  matrix: BandedMatrix,
  gradient: Float64Array,
  pictures: readonly PlacedPicture[],
  places: Float64Array,
  names: readonly LandmarkName[],
  jerkSd: Readonly<Record<LandmarkName, number>>,
): void {
  const width = 2 * names.length;
  for (let i = 0; i + 3 < pictures.length; i++) {
    const four = pictures.slice(i, i + 4);
    const span = (four[3]?.time ?? 0) - (four[0]?.time ?? 0);
    if (!(span > 0)) continue;
    const slopes = four.map(({ time }, k) =>
      four.reduce((product, other, m) => (m === k ? product : product / (time - other.time)), 6),
    );
    for (let n = 0; n < names.length; n++) {
      const sd = jerkSd[names[n] as LandmarkName];
      const weight = span / (3 * usualInterval) / (sd * sd);
      for (let axis = 0; axis < 2; axis++) {
        let jerk = 0;
        for (let k = 0; k < 4; k++) {
          const origin = (axis === 0 ? four[k]?.originX : four[k]?.originY) ?? 0;
          jerk += (slopes[k] as number) * ((places[(i + k) * width + 2 * n + axis] as number) + origin);
        }
        for (let k = 0; k < 4; k++) {
          const p = (i + k) * width + 2 * n + axis;
          const w = weight * (slopes[k] as number);
          gradient[p] = (gradient[p] as number) + w * jerk;
          for (let m = 0; m <= k; m++)
            addBanded(matrix, p, (i + m) * width + 2 * n + axis, w * (slopes[m] as number));
        }
      }
    }
  }
}
