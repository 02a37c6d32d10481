import { undoubted } from '#core/measures/doubtful';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trialContrasts } from '#core/practice/trial-contrast';
import type { TrialFactor, TrialRow } from '#core/practice/trial-row';
import { trialPoints } from '#core/practice/trial-points';
import { trialWarnings, trialWarningWords } from '#core/practice/trial-warning';
import { normal, seeded } from '../../../sample-clips/model/seeded';
import { aTrialRow, headTrial } from './a-trial-row';

const head: TrialFactor = { of: 'head' };
const all = (rows: readonly TrialRow[], factor: TrialFactor = head) => {
  const found = trialContrasts(rows, factor, 'speed-marks');
  if (!found.ok) throw new Error('speed is compared');
  return found.contrasts;
};
const only = (rows: readonly TrialRow[], factor: TrialFactor = head) => {
  const [contrast, ...rest] = all(rows, factor);
  if (contrast?.status !== 'contrast' || rest.length > 0) throw new Error('expected one contrast');
  return contrast;
};
const warned = (rows: readonly TrialRow[], factor: TrialFactor = head) =>
  only(rows, factor).warnings.map(({ code }) => code);

describe('a contrast of two conditions', () => {
  it('is Welch’s: by hand, means 2 and 5, variances 1, three repeats each', () => {
    // df 4, t 2.776445 (exact tables): half 2.776445·√(2/3) = 2.26696
    const found = only(headTrial([1, 2, 3], [4, 5, 6]));
    expect([found.first.level, found.second.level]).toEqual(['low', 'high']);
    expect(found.difference).toBeCloseTo(3, 12);
    expect(found.high - found.difference).toBeCloseTo(2.26696, 4);
    expect(found.verdict).toBe('clear');
    expect(found.moreRepeats).toEqual({ first: 0, second: 0 });
  });

  it('takes directions on either side of straight back for neighbours', () => {
    const rows = headTrial([179, -179, 180], [-176, -175, -177]).map((row) => ({
      ...row,
      values: new Map([...row.values].map(([id, found]) => [id, { ...found, unit: '°' as const }])),
    }));
    const found = only(rows);
    expect(found.first.mean).toBeCloseTo(180, 12);
    expect(found.difference).toBeCloseTo(4, 12);
  });

  it('says how many repeats more would settle it at this spread', () => {
    // by hand for |d| 2, variances 1: n 5 (df 8, t 2.306) half 1.458 < 2; n 4 (df 6, t 2.447) 1.730 < 2; n 3 2.267
    const found = only(headTrial([1, 2, 3], [3, 4, 5]));
    expect(found.verdict).toBe('not-yet');
    expect(found.moreRepeats).toEqual({ first: 1, second: 1 });
    expect(only(headTrial([1, 2, 3], [1, 2, 3])).moreRepeats).toBeNull();
  });

  it('always asks for at least one repeat while it is open, and for none once it is clear', () => {
    const speeds = fc.array(fc.double({ min: 0.5, max: 2.5, noNaN: true }), { minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(speeds, speeds, (low, high) => {
        const found = only(headTrial(low, high, 1e-4));
        const { moreRepeats: more, verdict } = found;
        expect(found.high).toBeGreaterThan(found.low);
        if (verdict === 'clear') expect(more).toEqual({ first: 0, second: 0 });
        else if (more) expect(more.first + more.second).toBeGreaterThan(0);
      }),
    );
  });

  it('asks for one more of each when uneven counts alone leave it open', () => {
    // by hand: variances 1 (n 3) and 0.3 (n 20): df 2.18, half 2.35 > 2.2; at three each df 3.1, half 2.05 < 2.2
    const high = Array.from(
      { length: 20 },
      (_, i) => 4.2 + (i % 2 === 0 ? 1 : -1) * Math.sqrt((0.3 * 19) / 20),
    );
    const found = only(headTrial([1, 2, 3], high));
    expect(found.verdict).toBe('not-yet');
    expect(found.moreRepeats).toEqual({ first: 1, second: 1 });
  });

  it('turns its sign, and nothing else, when all is mirrored', () => {
    const speeds = fc.array(fc.double({ min: 0.5, max: 2.5, noNaN: true }), { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(speeds, speeds, (low, high) => {
        const a = only(headTrial(low, high));
        const b = only(headTrial(high, low));
        expect(a.difference).toBeCloseTo(-b.difference, 9);
        expect(a.low).toBeCloseTo(-b.high, 9);
        expect(a.verdict).toBe(b.verdict);
      }),
    );
  });

  it('is never narrower than marking allows, and says that marking rules', () => {
    // by hand: equal repeats, marking variance 0.01 each: half = t(2) 4.302653·√(0.01/2 + 0.01/2) = 0.43027
    const found = only(headTrial([1, 1], [1.2, 1.2], 0.01));
    expect(found.high - found.difference).toBeCloseTo(0.43027, 4);
    expect(found.verdict).toBe('not-yet');
    expect(found.warnings.map(({ code }) => code)).toEqual(['mostly-marking']);
    // n 3: t(4) 2.776445·√(0.02/3) = 0.2267 > 0.2; n 4: t(6) 2.446912·√(0.02/4) = 0.1730 < 0.2
    expect(found.moreRepeats).toEqual({ first: 2, second: 2 });
  });

  it('holds the true difference about 95 times in 100, marking and swimmer both varying', () => {
    const random = seeded(5);
    const draws = 2000;
    let held = 0;
    for (let i = 0; i < draws; i++) {
      // swimmer SD 0.05, marking SD 0.03 m/s; the spread over repeats holds both
      const speeds = (count: number, mean: number): number[] =>
        Array.from({ length: count }, () => mean + 0.05 * normal(random) + 0.03 * normal(random));
      const found = only(headTrial(speeds(4, 1.2), speeds(6, 1.3), 9e-4));
      if (found.low <= 0.1 && 0.1 <= found.high) held += 1;
    }
    // three standard errors of 95 % in 2,000 draws are 1.5 %; the floor of marking can only widen
    expect(held / draws).toBeGreaterThan(0.935);
    expect(held / draws).toBeLessThan(0.985);
  });

  it('needs two repeats of each, and says how many are missing', () => {
    expect(all(headTrial([1], [1, 2]))[0]).toMatchObject({
      status: 'too-few',
      moreRepeats: { first: 1, second: 0 },
    });
    expect(all(headTrial([1, 2], []))).toEqual([]);
    expect(all([])).toEqual([]);
    expect(all(headTrial([1, 1], [1, 1], 0))[0]?.status).toBe('no-spread');
    expect(all(headTrial([1, Number.NaN], [1, 2]))[0]?.status).toBe('too-few');
  });

  it('never sets readings of time or distance under water against each other', () => {
    for (const id of [
      'underwater-time',
      'underwater-distance-marks',
      'underwater-distance-scale',
      'underwater-kicks',
    ]) {
      expect(trialContrasts(headTrial([1, 2], [1, 2]), head, id)).toEqual({
        ok: false,
        reason: 'never-compared',
      });
      expect(trialPoints(headTrial([1], [2]), head, { x: 'speed-marks', y: id })).toEqual([]);
    }
    expect(trialContrasts([], head, 'underwater-kick-frequency').ok).toBe(true);
  });
});

describe('repeats that are not alike', () => {
  const fins = (rows: readonly TrialRow[]): TrialRow[] =>
    rows.map((row) => ({ ...row, swimId: `fins-${row.swimId}`, work: { ...row.work, aids: ['fins'] } }));

  it('with and without aids are never pooled', () => {
    const bare = headTrial([1, 1.1], [1.2, 1.3]);
    const aided = fins(headTrial([2, 2.1], [2.2, 2.3]));
    const found = all([...bare, ...aided]);
    expect(found).toHaveLength(2);
    expect(found[0]).toEqual(all(bare)[0]);
    for (const { first, second } of found) {
      const ids = [...first.swimIds, ...second.swimIds];
      expect(new Set(ids.map((id) => id.startsWith('fins'))).size).toBe(1);
    }
    expect(trialWarnings([...bare, ...aided], head)).toEqual([
      { code: 'aids-kept-apart', aided: 4, unaided: 4 },
    ]);
  });

  it('one aided against one bare condition give no contrast at all', () => {
    const [bare, aided] = [headTrial([1, 1.1], []), fins(headTrial([], [2, 2.1]))];
    expect(all([...bare, ...aided])).toEqual([]);
  });

  it('are set against each other by aids only when asked, with a word of warning', () => {
    const rows = [...headTrial([1, 1.1], []), ...fins(headTrial([2, 2.1], []))];
    expect(warned(rows, { of: 'aids' })).toContain('between-aids');
    expect(trialWarnings(rows, { of: 'aids' })).toEqual([]);
  });

  it('of two swimmers are never pooled', () => {
    const mine = headTrial([1, 1.1], [1.2, 1.3]);
    const theirs = mine.map((row) => ({ ...row, swimmerId: 'swimmer-2' }));
    expect(all([...mine, ...theirs])).toHaveLength(2);
    expect(trialWarnings([...mine, ...theirs], head)).toEqual([{ code: 'swimmers-kept-apart', swimmers: 2 }]);
  });

  it('of two units are never pooled', () => {
    const [a, b, ...rest] = headTrial([1, 1.1], [1.2, 1.3]);
    const pixels = rest.map((row) => ({
      ...row,
      values: new Map([['speed-marks', { value: 100, unit: 'px/s' as const, ownVariance: 1, ...undoubted }]]),
    }));
    expect(all([a, b, ...pixels].filter((row) => row !== undefined))).toEqual([]);
  });

  it('whose condition is not said are left out and named', () => {
    const rows = [...headTrial([1, 1.1], [1.2, 1.3]), aTrialRow({ swimId: 'unsaid', speed: 9 })];
    expect(only(rows).difference).toBeCloseTo(0.2, 9);
    expect(trialWarnings(rows, head)).toEqual([{ code: 'level-not-said', swimIds: ['unsaid'] }]);
  });

  it('can be told apart by a free tag', () => {
    const rows = headTrial([1, 1.1], [1.2, 1.3]).map((row, i) => ({
      ...row,
      tags: { ...row.tags, free: i < 2 ? ['new line'] : [] },
    }));
    const found = only(rows, { of: 'tag', tag: 'new line' });
    expect([found.first.level, found.second.level]).toEqual(['new line', 'not new line']);
  });
});

describe('warnings of a contrast', () => {
  const rows = headTrial([1, 1.1], [1.2, 1.35]);

  it('are none for repeats swum in turns with cycles enough', () => {
    expect(warned(rows)).toEqual([]);
  });

  it('say when all of one condition came first', () => {
    const first = rows.map((row, order) => ({ ...row, order }));
    expect(only(first).warnings).toEqual([{ code: 'one-condition-first', level: 'low' }]);
    const last = rows.map((row, i) => ({ ...row, order: -i }));
    expect(only(last).warnings).toEqual([{ code: 'one-condition-first', level: 'high' }]);
    expect(warned(rows.map((row) => ({ ...row, order: 0 })))).toEqual([]);
  });

  it('say when the days differ', () => {
    const days = rows.map((row, i) => ({ ...row, day: i < 2 ? '2026-05-02' : '2026-05-01' }));
    expect(only(days).warnings).toEqual([
      { code: 'one-condition-first', level: 'high' },
      { code: 'different-days' },
    ]);
  });

  it('say when another condition went along', () => {
    const hips = rows.map((row, i) => ({
      ...row,
      tags: { ...row.tags, hips: i < 2 ? ('low' as const) : ('high' as const) },
    }));
    expect(only(hips).warnings).toEqual([{ code: 'other-condition-differs', factor: 'hips' }]);
  });

  it('name swims of fewer than six kick cycles, and of none', () => {
    const few = rows.map((row, i) => ({ ...row, kickCycles: [5, 6, null, 7][i] ?? null }));
    expect(only(few).warnings).toEqual([
      { code: 'few-kick-cycles', swimIds: ['low-0'] },
      { code: 'kick-cycles-unknown', swimIds: ['high-0'] },
    ]);
  });

  it('have words each', () => {
    const fins = rows.map((row) => ({ ...row, work: { ...row.work, aids: ['fins' as const] } }));
    const found = [
      ...only(rows.map((row, order) => ({ ...row, order, kickCycles: 3 }))).warnings,
      ...trialWarnings([...rows, ...fins, aTrialRow({ swimmerId: null })], head),
    ];
    expect(found).toHaveLength(5);
    for (const each of found) expect(trialWarningWords(each)).toMatch(/\.$/);
  });
});
