import { undoubted } from '#core/measures/doubtful';
import type { TrialRow } from '#core/practice/trial-row';
import { noTags } from '#core/swim-file/condition-tags';

interface RowWords extends Omit<Partial<TrialRow>, 'work' | 'tags' | 'values'> {
  readonly work?: Partial<TrialRow['work']>;
  readonly tags?: Partial<TrialRow['tags']>;
  readonly speed?: number;
  readonly variance?: number;
}

/** A streamlined kick repeat of an invented swimmer, with a speed in m/s. */
export function aTrialRow({ work, tags, speed = 1, variance = 1e-6, ...change }: RowWords = {}): TrialRow {
  return {
    swimId: 'swim-1',
    swimmerId: 'swimmer-1',
    day: '2026-05-01',
    order: 0,
    work: { stroke: 'dolphin-kick', drill: '', arms: 'stretched', sideUp: 'front', aids: [], ...work },
    tags: { ...noTags, ...tags },
    kickCycles: 8,
    values: new Map([['speed-marks', { value: speed, unit: 'm/s', ownVariance: variance, ...undoubted }]]),
    ...change,
  };
}

/** Repeats of two head positions, swum in turns, with these speeds. */
export function headTrial(low: readonly number[], high: readonly number[], variance = 1e-6): TrialRow[] {
  const of = (head: 'low' | 'high', speeds: readonly number[], from: number): TrialRow[] =>
    speeds.map((speed, i) =>
      aTrialRow({ swimId: `${head}-${i}`, order: 2 * i + from, tags: { head }, speed, variance }),
    );
  return [...of('low', low, 0), ...of('high', high, 1)];
}
