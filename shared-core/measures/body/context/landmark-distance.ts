import type { LandmarkName } from '../../../marks/landmark';
import type { BodyContext } from './body-context';
import type { BodyGeometry } from './body-geometry';
import { sampleVariance } from '../points/landmark-trace';
import { keptWith } from '../../../units/kept-with';

export interface LandmarkDistance {
  /** Along the body: straight from the one to the other, pool units. */
  readonly value: number;
  /** From the marks alone. */
  readonly variance: number;
  /** The same along travel, whichever way it goes: what the wave gains on the water over this stretch. */
  readonly along: number;
}

const kept = keptWith((_: BodyGeometry) => new Map<string, LandmarkDistance | null>());

/**
 * Mean distance between two landmarks over the postures that hold both: straight, noise across it taken off, and along travel.
 * Null of none.
 */
export function landmarkDistance(
  context: BodyContext,
  a: LandmarkName,
  b: LandmarkName,
): LandmarkDistance | null {
  const known = kept(context.geometry);
  const key = `${a} ${b}`;
  const found = known.get(key);
  const distance = found === undefined ? measured(context, a, b) : found;
  known.set(key, distance);
  return distance;
}

function measured(context: BodyContext, a: LandmarkName, b: LandmarkName): LandmarkDistance | null {
  const [p, q] = [context.trace(a), context.trace(b)];
  const marked = p.sd ** 2 + q.sd ** 2;
  const anyFollowed = p.followed !== null || q.followed !== null;
  let sum = 0;
  let along = 0;
  let n = 0;
  let total = 0;
  for (let i = 0, j = 0; i < p.frames.length && j < q.frames.length; i++, j++) {
    const apart = (p.frames[i] as number) - (q.frames[j] as number);
    if (apart !== 0) {
      // the one that is ahead waits
      if (apart < 0) j -= 1;
      else i -= 1;
      continue;
    }
    const dx = (q.x[j] as number) - (p.x[i] as number);
    const dy = (q.y[j] as number) - (p.y[i] as number);
    const d = Math.sqrt(dx * dx + dy * dy);
    const noise = anyFollowed ? sampleVariance(p, i) + sampleVariance(q, j) : marked;
    const followed = anyFollowed && (p.followed?.is[i] || q.followed?.is[j]);
    along += dx;
    sum += d > 0 ? d - Math.min(d / 2, noise / (2 * d)) : 0;
    total += followed ? noise * context.followedSpread.slow : noise;
    n += 1;
  }
  return n > 0 && sum > 0 ? { value: sum / n, variance: total / (n * n), along: Math.abs(along) / n } : null;
}
