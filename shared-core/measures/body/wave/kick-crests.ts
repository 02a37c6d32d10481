import { keptWith } from '../../../units/kept-with';
import type { LandmarkName } from '../../../marks/landmark';
import type { WaveFit } from '../../../signal/fit-wave';
import { waveExtremes } from '../../../signal/wave-extremes';
import { waveHarmonics, wrap } from '../../../signal/wave-harmonics';
import { studentQuantile975 } from '../../../uncertainty/student-quantile';
import type { BodyContext } from '../context/body-context';
import { kickPhase } from './kick-phase';
import type { LandmarkWave } from './landmark-wave';

/** Where the kick of a landmark's height is, in other ways than by the kick's own harmonic of all cycles; radians. */
export interface KickCrests {
  /** Phase of the kick's harmonic in each cycle's own fit; none where cycles have no fits of their own. */
  readonly perCycle: readonly number[];
  /** Phase of the highest point of the whole kick, and of its lowest less half a turn. */
  readonly byTop: number;
  readonly byBottom: number;
}

/** Crests of the kick of a landmark; null where its wave can't be told. */
export function kickCrests(context: BodyContext, landmark: LandmarkName): KickCrests | null {
  const found = kickPhase(context, landmark);
  return found.ok ? crestsOf(found.wave) : null;
}

const crestsOf = keptWith(({ frame, pooled, perCycle, sd }: LandmarkWave): KickCrests | null => {
  const origin = frame.spans[0]?.start ?? 0;
  const kick = kickOnly(pooled, frame.kickHarmonic);
  const extremes = kick && waveExtremes(kick, 0);
  if (!kick || !extremes) return null;
  const at = (time: number): number => kick.angularFrequency * (time - origin);
  return {
    perCycle: perCycle.flatMap(
      ({ fit }) => waveHarmonics(fit, sd ** 2, origin)[frame.kickHarmonic - 1]?.phase ?? [],
    ),
    byTop: at(extremes.highest.time),
    byBottom: at(extremes.lowest.time) - Math.PI,
  };
});

/** The part of a wave that comes again with every kick: the kick's harmonic of the base and its multiples. */
function kickOnly(fit: WaveFit, kickHarmonic: number): WaveFit | null {
  const first = fit.hasSlope ? 2 : 1;
  const harmonics = Math.floor(fit.harmonics / kickHarmonic);
  if (harmonics < 1) return null;
  const coefficients = new Float64Array(1 + 2 * harmonics);
  for (let k = 1; k <= harmonics; k++) {
    const from = first + 2 * (k * kickHarmonic - 1);
    coefficients[2 * k - 1] = fit.coefficients[from] as number;
    coefficients[2 * k] = fit.coefficients[from + 1] as number;
  }
  return {
    ...fit,
    harmonics,
    hasSlope: false,
    angularFrequency: kickHarmonic * fit.angularFrequency,
    coefficients,
    // where its extremes lie is asked, not how exactly
    unitCovariance: new Float64Array(coefficients.length ** 2),
  };
}

/** Bounds of a value, and whether they answer how much a swimmer varies. */
export interface SwimmerBounds {
  readonly low: number;
  readonly high: number;
}

/**
 * 95 % interval of what a swimmer does, of a lag or a slope of lags: its spread between cycles by Student's t, and wide enough
 * to hold what it would be by the tops of the kick alone and by the bottoms alone. Null with fewer than two cycles of their own.
 *
 * @param of the value from one phase for each landmark, in the order of `crests`; phases are given near `like`'s
 */
export function swimmerBounds(
  crests: readonly (KickCrests | null)[],
  like: readonly number[],
  of: (phases: readonly number[]) => number,
): SwimmerBounds | null {
  const rows = crests.flatMap((each) => each ?? []);
  const count = Math.min(...rows.map(({ perCycle }) => perCycle.length));
  if (rows.length < crests.length || !(count >= 2)) return null;
  // only lags count: the first landmark stands for the clock, and the others are brought near their place behind it
  const read = (phases: readonly number[]): number =>
    of(
      phases.map((phase, i) => {
        const behind = (like[i] as number) - (like[0] as number);
        return behind + wrap(phase - (phases[0] as number) - behind);
      }),
    );
  const value = of(like);
  const single = Array.from({ length: count }, (_, i) =>
    read(rows.map(({ perCycle }) => perCycle[i] as number)),
  );
  const mean = single.reduce((sum, each) => sum + each, 0) / count;
  const variance = single.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (count - 1);
  const half = studentQuantile975(count - 1) * Math.sqrt(variance / count);
  const ends = [read(rows.map(({ byTop }) => byTop)), read(rows.map(({ byBottom }) => byBottom))];
  return { low: Math.min(value - half, ...ends), high: Math.max(value + half, ...ends) };
}
