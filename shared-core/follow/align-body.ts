import type { LandmarkName } from '../marks/landmark';
import type { Point } from '../units/point';
import { addExpected, addLengths, type Expected, type ExpectedLength } from './body-priors';
import type { GreyLevel } from './grey-pyramid';
import type { Limb } from './limb';
import { addLooks, type Residuals, type WeighedTemplate } from './limb-looks';
import { solveSymmetric } from './solve-symmetric';

export interface AlignedBody {
  readonly points: ReadonlyMap<LandmarkName, Point>;
  /** Variance of one axis, the larger of the two directions, px². */
  readonly variances: ReadonlyMap<LandmarkName, number>;
  /** Root mean square of what each limb's look could not explain, share of the look's own contrast. */
  readonly residuals: ReadonlyMap<Limb, number>;
}

const roundsALevel = 6;
/**
 * Lays the body's landmarks on a picture so that every limb looks as it did where it was marked: least squares of grey
 * differences over all limbs at once (Gauss–Newton from coarse to fine, differences beyond a few grey steps weighed
 * down), held by where each landmark is expected and by how long each limb should look. A limb's brightness and
 * contrast may change. Points in pixels of the first level, pixel centres at whole numbers.
 */
export function alignBody(
  pyramid: readonly GreyLevel[],
  templates: readonly WeighedTemplate[],
  expected: ReadonlyMap<LandmarkName, Expected>,
  lengths: readonly ExpectedLength[],
): AlignedBody {
  const names = [...expected.keys()];
  const index = new Map(names.map((name, i) => [name, i]));
  const size = 2 * names.length;
  const state = new Float64Array(size);
  names.forEach((name, i) => {
    const at = expected.get(name)?.at;
    state[2 * i] = at?.x ?? 0;
    state[2 * i + 1] = at?.y ?? 0;
  });
  const hessian = new Float64Array(size * size);
  const gradient = new Float64Array(size);
  let residuals: Residuals = new Map();
  for (let level = pyramid.length - 1; level >= 0; level--) {
    const picture = pyramid[level];
    if (!picture) continue;
    for (let round = 0; round < roundsALevel; round++) {
      hessian.fill(0);
      gradient.fill(0);
      addExpected(names, expected, state, hessian, gradient);
      addLengths(lengths, index, state, hessian, gradient);
      residuals = addLooks(picture, level, templates, index, state, hessian, gradient);
      const step = solveSymmetric(hessian, gradient, size);
      if (!step) break;
      let largest = 0;
      for (let i = 0; i < size; i++) {
        state[i] = (state[i] as number) - (step[i] as number);
        largest = Math.max(largest, Math.abs(step[i] as number));
      }
      if (largest < 0.05 * 2 ** level) break;
    }
  }
  return {
    points: new Map(
      names.map((name, i) => [name, { x: state[2 * i] as number, y: state[2 * i + 1] as number }]),
    ),
    variances: spreadOf(names, hessian, size),
    residuals: new Map(
      [...residuals].map(([limb, { squares, weight }]) => [limb, Math.sqrt(squares / weight)]),
    ),
  };
}

/** Variance of each landmark along its worse direction, from the inverse of the curvature. */
function spreadOf(
  names: readonly LandmarkName[],
  hessian: Float64Array,
  size: number,
): ReadonlyMap<LandmarkName, number> {
  const spread = new Map<LandmarkName, number>();
  names.forEach((name, i) => {
    const column = (axis: number): Float64Array | null => {
      const unit = new Float64Array(size);
      unit[2 * i + axis] = 1;
      return solveSymmetric(hessian, unit, size);
    };
    const x = column(0);
    const y = column(1);
    const xx = x?.[2 * i] ?? Infinity;
    const xy = x?.[2 * i + 1] ?? 0;
    const yy = y?.[2 * i + 1] ?? Infinity;
    spread.set(name, (xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy));
  });
  return spread;
}
