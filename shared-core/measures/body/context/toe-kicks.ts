import { fitWave } from '../../../signal/fit-wave';
import type { CycleSpan } from './cycle-span';
import type { LandmarkTrace } from '../points/landmark-trace';

/** Times a cycle the toe is looked for at most: three kicks a stroke, every second of them marked. Our default. */
const most = 6;

/** The toe's strongest wave must be this many times the next to tell how often it goes up and down. Our default. */
const clearly = 1.3;

/** Samples of a cycle that are asked at most. Our default. */
const samplesInCycle = 40;

/**
 * How many times a cycle the toes go up and down, from their own height: what the marks of the feet can be checked by. Null
 * where body lines are too sparse to tell, or no one wave is clearly the strongest.
 */
export function toeKicks(trace: LandmarkTrace, spans: readonly CycleSpan[], period: number): number | null {
  const [first, last] = [spans[0], spans.at(-1)];
  if (!first || !last) return null;
  const inside = trace.times.flatMap((time, i) => (time >= first.start && time <= last.end ? [i] : []));
  const perCycle = inside.length / Math.max(1, (last.end - first.start) / period);
  const harmonics = Math.min(most, Math.floor((perCycle - 1) / 2));
  if (harmonics < 2 || inside.length < 2 * harmonics + 4) return null;
  const stride = Math.max(1, Math.floor(perCycle / samplesInCycle));
  const picked = inside.filter((_, i) => i % stride === 0);
  const fit = fitWave(
    picked.map((i) => trace.times[i] as number),
    picked.map((i) => trace.y[i] as number),
    { period, harmonics, slope: true },
  );
  if (!fit) return null;
  const skip = fit.hasSlope ? 2 : 1;
  const sizes = Array.from({ length: fit.harmonics }, (_, k) =>
    Math.hypot(fit.coefficients[skip + 2 * k] as number, fit.coefficients[skip + 2 * k + 1] as number),
  );
  const [largest = 0, next = 0] = [...sizes].sort((a, b) => b - a);
  if (!(largest > clearly * next) || !(largest > 3 * trace.sd)) return null;
  return sizes.indexOf(largest) + 1;
}
