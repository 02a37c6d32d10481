import type { Reading } from '#core/measures/reading';

/** How often a reading came out in each way. */
export interface Outcome {
  held: number;
  /** Off by more than a tenth, or outside its interval, but not both: no gross error. */
  near: number;
  refused: number;
  doubted: number;
  gross: number;
  /** Of the gross ones, those of which the truth lies more than twice as far off as the interval reaches: hardly by chance. */
  sure: number;
  /** Intervals without the truth among values that say no doubt: one in twenty is what a 95 % interval misses. */
  missed: number;
}

/** What one reading came out as: the counts that leave none out and none twice. */
export type Fate = 'held' | 'near' | 'refused' | 'doubted' | 'gross';

export const noOutcome = (): Outcome => ({
  held: 0,
  near: 0,
  refused: 0,
  doubted: 0,
  gross: 0,
  sure: 0,
  missed: 0,
});

/**
 * How far off counts as gross: a tenth of the truth. Of what may be nothing in truth, a tenth of what it is a part of: for gaps
 * of the stroke, for lags of half a turn, for a wave of the largest wave of its landmark.
 */
function tenth(id: string, unit: string, real: number, truth: ReadonlyMap<string, number>): number {
  if (unit === '°') return 18;
  if (/^(gap|kick[12])-/.test(id)) return unit === 'ms' ? 6000 / (truth.get('stroke-rate') ?? 60) : 10;
  const wave = /^harmonic-\d-(.+)$/.exec(id)?.[1];
  if (wave) return 0.05 * (truth.get(`undulation-${wave}`) ?? 0);
  return 0.1 * Math.abs(real);
}

/** Counts what became of one reading of one swim; nothing where its truth is not known. */
export function countOutcome(reading: Reading, truth: ReadonlyMap<string, number>, into: Outcome): void {
  const fate = fateOf(reading, truth);
  if (!fate) return;
  into[fate] += 1;
  if (reading.status === 'missing' || fate === 'held' || fate === 'doubted') return;
  const { value, interval } = reading;
  const real = truth.get(reading.id) ?? value;
  if (real < interval.low || real > interval.high) into.missed += 1;
  const reach = real > value ? interval.high - value : value - interval.low;
  if (fate === 'gross' && Math.abs(real - value) > 2 * reach) into.sure += 1;
}

/** What became of one reading of one swim; null where its truth is not known. */
export function fateOf(reading: Reading, truth: ReadonlyMap<string, number>): Fate | null {
  const real = truth.get(reading.id);
  if (real === undefined || Number.isNaN(real)) return null;
  if (reading.status === 'missing') return 'refused';
  if (reading.doubts.length > 0) return 'doubted';
  const { low, high } = reading.interval;
  const isInside = low <= real && real <= high;
  const isFar = Math.abs(reading.value - real) > tenth(reading.id, reading.unit, real, truth);
  if (isInside) return 'held';
  return isFar ? 'gross' : 'near';
}
