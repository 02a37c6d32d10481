import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededUniform } from '#core/uncertainty/seeded-uniform';
import { trialCsv } from '#core/practice/trial-csv';
import { trialPlan } from '#core/practice/trial-plan';
import { parseTrial, serialiseTrial, type Trial } from '#core/practice/trial-schema';
import { trialRow } from '#core/practice/trial-row';
import { noTags } from '#core/swim-file/condition-tags';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import { aSwim } from '../swim-file/a-swim';
import { aTrialRow, headTrial } from './a-trial-row';

const planOf = (conditions: readonly string[], repeatsEach: number, seed: number) => {
  const plan = trialPlan(conditions, repeatsEach, seed);
  if (!plan.ok) throw new Error(plan.fault.code);
  return plan.repeats;
};

describe('a plan of repeats', () => {
  it('holds every condition once a round, whatever the seed', () => {
    const conditions = fc.uniqueArray(fc.string({ minLength: 1, maxLength: 8 }), {
      minLength: 2,
      maxLength: 6,
    });
    fc.assert(
      fc.property(conditions, fc.integer({ min: 1, max: 8 }), fc.maxSafeInteger(), (names, each, seed) => {
        const repeats = planOf(names, each, seed);
        expect(repeats.map(({ position }) => position)).toEqual(repeats.map((_, i) => i));
        for (let round = 0; round < each; round++) {
          const found = repeats.filter((repeat) => repeat.round === round).map(({ condition }) => condition);
          expect(found.sort()).toEqual([...names].sort());
        }
      }),
    );
  });

  it('is the same for the same seed, and not for all seeds', () => {
    const names = ['a', 'b', 'c', 'd'];
    expect(planOf(names, 4, 7)).toEqual(planOf(names, 4, 7));
    const orders = new Set([1, 2, 3, 4, 5].map((seed) => JSON.stringify(planOf(names, 4, seed))));
    expect(orders.size).toBeGreaterThan(1);
  });

  it('comes in each of the six orders of three about equally often', () => {
    const seen = new Map<string, number>();
    const draws = 6000;
    for (let seed = 0; seed < draws; seed++) {
      const order = planOf(['a', 'b', 'c'], 1, seed)
        .map(({ condition }) => condition)
        .join('');
      seen.set(order, (seen.get(order) ?? 0) + 1);
    }
    expect(seen.size).toBe(6);
    // binomial SD of 6,000 draws at one in six is 28.9; five of them
    for (const count of seen.values()) expect(Math.abs(count - draws / 6)).toBeLessThan(145);
  });

  it('refuses what can not be planned', () => {
    const fault = (conditions: readonly string[], each: number, seed: number) => {
      const plan = trialPlan(conditions, each, seed);
      return plan.ok ? null : plan.fault;
    };
    expect(fault(['a'], 3, 1)).toEqual({ code: 'too-few-conditions' });
    expect(fault(['a', 'b', 'a'], 3, 1)).toEqual({ code: 'condition-twice', condition: 'a' });
    expect(fault(['a', 'b'], 0, 1)).toEqual({ code: 'repeats-out-of-range' });
    expect(fault(['a', 'b'], 2.5, 1)).toEqual({ code: 'repeats-out-of-range' });
    expect(fault(['a', 'b'], 3, Number.NaN)).toEqual({ code: 'seed-not-whole' });
  });

  it('draws from numbers that are uniform enough: mean, variance and range', () => {
    const random = seededUniform(3);
    const draws = Array.from({ length: 20_000 }, () => random());
    const mean = draws.reduce((sum, each) => sum + each, 0) / draws.length;
    const variance = draws.reduce((sum, each) => sum + (each - mean) ** 2, 0) / draws.length;
    // five standard errors: 0.2887/√20000·5 = 0.0102, and 0.0745/√20000·5 = 0.0026
    expect(Math.abs(mean - 0.5)).toBeLessThan(0.0102);
    expect(Math.abs(variance - 1 / 12)).toBeLessThan(0.0027);
    expect(Math.min(...draws)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...draws)).toBeLessThan(1);
  });
});

describe('a trial file', () => {
  const trial: Trial = {
    format: 'submark-trial',
    version: 1,
    id: 'trial-1',
    createdAt: '2026-05-01T10:00:00.000Z',
    changedAt: '2026-05-01T10:00:00.000Z',
    title: 'Head position',
    factor: { of: 'head' },
    readings: ['speed-marks', 'head-offset'],
    rows: [{ swimId: 'swim-1', order: 0, tags: { ...noTags, head: 'low' } }],
    plan: { seed: 7, conditions: ['low', 'high'], repeatsEach: 3 },
    note: '',
    invented: true,
  };

  it('goes out and comes back', () => {
    expect(parseTrial(serialiseTrial(trial))).toEqual({ ok: true, value: trial });
  });

  it('of the first released version opens unchanged', () => {
    const text = readFileSync(new URL('./frozen/trial-v1.json', import.meta.url), 'utf8');
    const parsed = parseTrial(text);
    expect(parsed.ok && serialiseTrial(parsed.value)).toBe(text);
  });

  it('refuses to ask about time or distance under water', () => {
    const asked = { ...trial, readings: ['underwater-time'] };
    expect(parseTrial(JSON.stringify(asked))).toMatchObject({ ok: false, fault: { where: 'readings' } });
  });
});

describe('a row of a trial', () => {
  it('is made from a swim and holds exactly the readings that could be computed', () => {
    const swim = aSwim();
    const readings = computeReadings(readingContext(swim, { swimmer: null, markingError: null }));
    const row = trialRow(swim, 3, noTags, readings);
    const computed = readings.filter(({ status }) => status === 'computed').map(({ id }) => id);
    expect([...row.values.keys()]).toEqual(computed);
    expect(row).toMatchObject({ swimId: 'swim-1', order: 3, day: '2026-05-01', work: { aids: ['fins'] } });
  });
});

describe('a trial as CSV', () => {
  it('has one row a repeat in the order swum, and one cell a column', () => {
    const lines = trialCsv(headTrial([1, 2], [3]), ['speed-marks', 'head-offset']).split('\r\n');
    expect(lines).toHaveLength(5);
    expect(lines[4]).toBe('');
    expect(new Set(lines.slice(0, 4).map((line) => line.split(',').length))).toEqual(new Set([13 + 6 + 2]));
    expect(lines.slice(1, 4).map((line) => line.split(',')[0])).toEqual(['low-0', 'high-0', 'low-1']);
    expect(lines[1]?.endsWith('1,m/s,0.001,,,,,')).toBe(true);
  });

  it('quotes commas and quotes, and lets no text run as a formula', () => {
    const row = aTrialRow({ work: { drill: '=1+1' }, tags: { free: ['a, "b"', 'c'] } });
    const text = trialCsv([row], []);
    expect(text).toContain(",'=1+1,");
    expect(text).toContain('"a, ""b""; c"');
  });
});
