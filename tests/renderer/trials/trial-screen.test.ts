import { describe, expect, it } from 'vitest';
import { trialContrasts } from '#core/practice/trial-contrast';
import { noTags } from '#core/swim-file/condition-tags';
import { headTrial } from '#tests/shared-core/practice/a-trial-row';
import { tagsOf } from '../../../renderer/card/conditions-form';
import { fitsFilter } from '../../../renderer/trials/add-swims';
import { movedRow, newTrial, withSwims } from '../../../renderer/trials/new-trial';
import { contrastWords } from '../../../renderer/trials/trial-contrast-table';
import { plotsOf } from '../../../renderer/trials/trial-plots';
import { undoubted } from '#core/measures/doubtful';
import { differenceWords, levelWords, repeatsWords } from '../../../renderer/trials/trial-words';
import { aSummary } from '../a-summary';

const everything = { swimmer: '', head: '', hips: '', depth: '', arms: '', aids: '', tag: '' };

describe('choosing swims', () => {
  const low = aSummary('b', { conditions: { ...noTags, head: 'low', free: ['tired'] } });
  const finned = aSummary('a', { aids: ['fins'] });

  it('finds them by what the card says, aids apart', () => {
    const ids = (filter: Partial<typeof everything>): string[] =>
      [low, finned].filter((swim) => fitsFilter(swim, { ...everything, ...filter })).map(({ id }) => id);
    expect(ids({})).toEqual(['b', 'a']);
    expect(ids({ head: 'low' })).toEqual(['b']);
    expect(ids({ tag: 'tired' })).toEqual(['b']);
    expect(ids({ aids: 'with' })).toEqual(['a']);
    expect(ids({ aids: 'without', head: 'high' })).toEqual([]);
  });

  it('puts them at the end in the order of their days, once each, with the words of their cards', () => {
    const rows = withSwims([{ swimId: 'first', order: 4, tags: noTags }], [low, finned]);
    expect(rows.map(({ swimId, order }) => [swimId, order])).toEqual([
      ['first', 4],
      ['b', 5],
      ['a', 6],
    ]);
    expect(rows[1]?.tags.head).toBe('low');
    expect(withSwims(rows, [low])).toEqual(rows);
  });

  it('moves a repeat by one and leaves the ends alone', () => {
    const rows = ['a', 'b', 'c'].map((swimId, order) => ({ swimId, order, tags: noTags }));
    const order = (by: -1 | 1, id: string): string =>
      movedRow(rows, id, by)
        .map((each) => each.swimId)
        .join('');
    expect(order(-1, 'c')).toBe('acb');
    expect(order(1, 'a')).toBe('bac');
    expect(order(-1, 'a')).toBe('abc');
    expect(order(1, 'c')).toBe('abc');
  });

  it('reads free tags as typed, each once', () => {
    expect(tagsOf(' tired , new cap,, tired')).toEqual(['tired', 'new cap']);
    expect(tagsOf('')).toEqual([]);
  });
});

describe('the words of a trial', () => {
  it('print a difference with both ends in the digits its interval earns, and minus as a minus', () => {
    expect(differenceWords(0.1234, 0.03, 0.2168, 'm/s', undoubted)).toBe('+0.12 (+0.03 to +0.22) m/s');
    expect(differenceWords(-12.3, -20.1, -4.5, 'ms', undoubted)).toBe('−12 (−20 to −5) ms');
  });

  it('say what is still to swim, and when it can’t be settled', () => {
    expect(repeatsWords({ first: 2, second: 0 }, 'low', 'high')).toBe('2 more of “low”.');
    expect(repeatsWords(null, 'low', 'high')).toMatch(/More than 200/);
    expect(levelWords({ of: 'aids' }, 'fins+snorkel', [])).toBe('fins and snorkel');
    expect(levelWords({ of: 'drill' }, 'kick-front-folded', [])).toBe('Kick on the front, arms folded');
  });

  it('call a difference clear only with the repeats for it', () => {
    const found = trialContrasts(
      headTrial([1, 1.02, 0.98, 1.01], [1.3, 1.28, 1.31, 1.29]),
      { of: 'head' },
      'speed-marks',
    );
    const [contrast] = found.ok ? found.contrasts : [];
    expect(contrast && contrastWords(contrast, 'low', 'high')).toMatchObject({
      verdict: 'clear',
      settle: 'Settled.',
    });
    const few = trialContrasts(headTrial([1], [1.3]), { of: 'head' }, 'speed-marks');
    const [one] = few.ok ? few.contrasts : [];
    expect(one && contrastWords(one, 'low', 'high')).toMatchObject({
      verdict: 'too-few',
      settle: '1 more of “low” and 1 more of “high”.',
    });
  });

  it('draw speed against posture only where two repeats have both', () => {
    const rows = headTrial([1, 1.1], [1.3]).map((row, i) => ({
      ...row,
      values: new Map([
        ...row.values,
        ...(i < 2
          ? [['head-offset', { value: i, unit: '%L', ownVariance: 0.1, ...undoubted }] as const]
          : []),
      ]),
    }));
    const trial = { ...newTrial('t', '2026-05-01T00:00:00.000Z'), readings: ['speed-marks', 'head-offset'] };
    expect(plotsOf(trial, rows).map(({ x, y, points }) => [x, y, points.length])).toEqual([
      ['head-offset', 'speed-marks', 2],
    ]);
    expect(plotsOf(trial, rows.slice(1))).toEqual([]);
  });
});
