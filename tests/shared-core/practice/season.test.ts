import { describe, expect, it } from 'vitest';
import type { ComputedReading } from '#core/measures/reading';
import { type FilmNext, filmNext, filmNextWords } from '#core/practice/film-next';
import { lastClearChange, seasonChange, seasonChangeWords, seasonLines } from '#core/practice/season-change';
import { mainWay } from '#core/practice/main-way';
import { type SeasonSwim, seasonSwim } from '#core/practice/season-swim';
import { squadSeason } from '#core/practice/squad-season';
import { normal, seeded } from '../../../sample-clips/model/seeded';
import { aSwim } from '../swim-file/a-swim';
import { aPractice, anEntry, anItem } from './a-practice';

const aReading = (value: number, change: Partial<ComputedReading> = {}): ComputedReading => ({
  status: 'computed',
  id: 'kick-frequency',
  value,
  unit: 'Hz',
  interval: { low: value - 0.1, high: value + 0.1, question: 'this-swim' },
  otherInterval: null,
  sharedVariance: 0,
  ownVariance: 1e-4,
  cycles: 8,
  followed: 0,
  perCycle: [],
  singles: null,
  from: { eventIds: [], postureFrames: [], sceneItems: [] },
  notes: [],
  doubts: [],
  ...change,
});

interface SwimWords extends Omit<Partial<SeasonSwim>, 'work' | 'readings'> {
  readonly work?: Partial<SeasonSwim['work']>;
  readonly reading?: ComputedReading | null;
}
const aSeasonSwim = ({ work, reading = aReading(2), ...change }: SwimWords = {}): SeasonSwim => ({
  swimId: 'swim-1',
  swimmerId: 'swimmer-1',
  day: '2026-05-01',
  view: 'side',
  effort: null,
  work: { stroke: 'butterfly', drill: '', arms: 'stroking', sideUp: 'front', aids: [], ...work },
  readings: new Map(reading ? [[reading.id, reading]] : []),
  ...change,
});

const changeOf = (...swims: readonly SeasonSwim[]) => {
  const lines = seasonLines(swims, 'kick-frequency');
  const [line] = lines;
  if (!line || lines.length > 1) throw new Error('expected one line');
  return seasonChange(line);
};

describe('a change over a season', () => {
  const may = (reading: ComputedReading) => aSeasonSwim({ day: '2026-05-01', reading });
  const june = (reading: ComputedReading) => aSeasonSwim({ day: '2026-06-01', swimId: 'swim-2', reading });

  it('is clear beyond marking: by hand, 1.96·√(0.01² + 0.01²) = 0.0277', () => {
    expect(changeOf(may(aReading(2)), june(aReading(2.03)))).toMatchObject({
      verdict: 'clear',
      since: '2026-05-01',
    });
    expect(changeOf(may(aReading(2)), june(aReading(2.02)))).toMatchObject({ verdict: 'within-error' });
  });

  it('is none when the strokes of the swims vary by as much', () => {
    const varied = (value: number): ComputedReading =>
      aReading(value, { otherInterval: { low: value - 0.1, high: value + 0.1, question: 'this-swimmer' } });
    // by hand: √(0.1² + 0.1²) = 0.1414
    expect(changeOf(may(varied(2)), june(varied(2.13)))).toMatchObject({
      verdict: 'within-error',
      rests: 'marking-and-cycles',
    });
    expect(changeOf(may(varied(2)), june(varied(2.15)))).toMatchObject({ verdict: 'clear' });
    expect(changeOf(may(aReading(2)), june(aReading(2.1)))).toMatchObject({ rests: 'marking-alone' });
  });

  it('counts the scale of both days in full', () => {
    const scaled = (value: number): ComputedReading => aReading(value, { sharedVariance: 4e-4 });
    // by hand: 1.96·√(2·1e-4 + 2·4e-4) = 0.062
    expect(changeOf(may(scaled(2)), june(scaled(2.05)))).toMatchObject({ verdict: 'within-error' });
  });

  it('runs from the first to the latest day, in whatever order swims come', () => {
    const swims = [
      june(aReading(2.5)),
      aSeasonSwim({ day: '2026-05-10', reading: aReading(9) }),
      may(aReading(2)),
    ];
    expect(changeOf(...swims)).toMatchObject({ since: '2026-05-01', until: '2026-06-01', value: 0.5 });
  });

  it('is not told from one day', () => {
    expect(changeOf(may(aReading(2)), may(aReading(3)))).toEqual({
      status: 'one-day-only',
      day: '2026-05-01',
    });
  });

  it('keeps aids, drills, swimmers and units on lines of their own', () => {
    const other: SwimWords[] = [
      { work: { aids: ['fins'] } },
      { work: { drill: 'kick in, kick out' } },
      { swimmerId: 'swimmer-2' },
      { reading: aReading(2, { unit: 'px' }) },
    ];
    for (const each of other)
      expect(seasonLines([aSeasonSwim(), aSeasonSwim(each)], 'kick-frequency')).toHaveLength(2);
    expect(seasonLines([aSeasonSwim(), aSeasonSwim({ view: 'below' })], 'kick-frequency')).toHaveLength(1);
  });

  it('is never drawn of time or distance under water', () => {
    const reading = aReading(6, { id: 'underwater-distance-marks', unit: 'm' });
    expect(seasonLines([aSeasonSwim({ reading })], 'underwater-distance-marks')).toEqual([]);
  });

  it('is told in words, with a caveat when the effort was another', () => {
    const found = changeOf(may(aReading(2)), { ...june(aReading(2.5)), effort: 'full' });
    if (!found) throw new Error('expected a change');
    expect(seasonChangeWords(found, (value) => value.toFixed(2))).toBe(
      'Clear change since 2026-05-01: +0.50 ± 0.03; the effort was not the same',
    );
  });

  it('is called between two swims that are truly the same 5 times in 100', () => {
    const random = seeded(23);
    const draws = 2000;
    let called = 0;
    for (let i = 0; i < draws; i++) {
      const found = changeOf(
        may(aReading(2 + 0.01 * normal(random))),
        june(aReading(2 + 0.01 * normal(random))),
      );
      if (found?.status === 'compared' && found.verdict === 'clear') called += 1;
    }
    // three standard errors of 5 % in 2,000 draws are 1.5 %
    expect(Math.abs(called / draws - 0.05)).toBeLessThan(0.015);
  });
});

describe('the last clear change', () => {
  const lastOf = (...values: readonly number[]) => {
    const swims = values.map((value, i) =>
      aSeasonSwim({ day: `2026-05-0${i + 1}`, swimId: `swim-${i}`, reading: aReading(value) }),
    );
    const [line] = seasonLines(swims, 'kick-frequency');
    return line ? lastClearChange(line) : null;
  };

  it('is since the latest day from which, and from all before it, the swim differs', () => {
    // 0.0277 is clear, by hand as above
    expect(lastOf(2, 2.01, 2.02, 2.06)).toMatchObject({
      verdict: 'clear',
      since: '2026-05-03',
      value: expect.closeTo(0.04, 9),
    });
    expect(lastOf(2, 2.01, 2.05, 2.06)).toMatchObject({ verdict: 'clear', since: '2026-05-02' });
    // a day between that was as today ends the search, whatever came after
    expect(lastOf(2, 2.06, 2, 2.06)).toMatchObject({ verdict: 'clear', since: '2026-05-01' });
    expect(lastOf(2, 2.1, 2.01)).toMatchObject({ verdict: 'within-error', since: '2026-05-01' });
    expect(lastOf(2)).toMatchObject({ status: 'one-day-only' });
  });

  it('is called among many swims that are truly the same no more often than 5 times in 100', () => {
    const random = seeded(29);
    let called = 0;
    for (let i = 0; i < 1000; i++) {
      const found = lastOf(...Array.from({ length: 6 }, () => 2 + 0.01 * normal(random)));
      if (found?.status === 'compared' && found.verdict === 'clear') called += 1;
    }
    // three standard errors of 5 % in 1,000 draws are 2.1 %
    expect(called / 1000).toBeLessThan(0.071);
  });
});

describe('a swimmer’s main way of swimming', () => {
  it('is the one filmed most, the later of two filmed as often, latest last and twelve at most', () => {
    const { card } = aSwim();
    const swum = (date: string, drill = '') => ({ card: { ...card, date, drill } });
    const days = (swims: readonly { card: { date: string } }[]) => swims.map((swim) => swim.card.date);
    const two = [swum('2026-05-03'), swum('2026-05-01'), swum('2026-05-09', 'kick only')];
    expect(days(mainWay(two, []))).toEqual(['2026-05-01', '2026-05-03']);
    const even = [swum('2026-05-01'), swum('2026-05-02', 'kick only')];
    expect(days(mainWay(even, []))).toEqual(['2026-05-02']);
    const many = Array.from({ length: 20 }, (_, i) => swum(`2026-05-${10 + i}`));
    expect(days(mainWay(many, []))).toHaveLength(12);
    expect(mainWay(many, []).at(-1)?.card.date).toBe('2026-05-29');
    expect(mainWay([], [])).toEqual([]);
  });
});

describe('what to film next', () => {
  const today = '2026-06-01';
  const swimmer = { id: 'swimmer-1', targets: [] };
  const codes = (...args: Parameters<typeof filmNext>) => filmNext(...args).map(({ code }) => code);
  const recent = { day: '2026-05-28' };
  const twice = [aSeasonSwim(recent), aSeasonSwim({ day: '2026-05-20' })];

  it('is nothing when all is fresh, from the side, bare, and swum twice', () => {
    expect(filmNext(swimmer, twice, [], today)).toEqual([]);
  });

  it('is the swimmer at all, first of all', () => {
    expect(codes(swimmer, [], [], today)).toEqual(['never-filmed']);
    expect(codes(swimmer, [aSeasonSwim({ swimmerId: 'swimmer-2' })], [], today)).toEqual(['never-filmed']);
    expect(codes(swimmer, [aSeasonSwim({ day: '2026-06-02' })], [], today)).toEqual(['never-filmed']);
  });

  it('is anything after more than 28 days', () => {
    const on = (day: string) =>
      filmNext(swimmer, [aSeasonSwim({ day }), aSeasonSwim({ day: '2026-01-01' })], [], today);
    expect(on('2026-05-04')).toEqual([]);
    expect(on('2026-05-03')).toEqual([{ code: 'long-ago', lastDay: '2026-05-03', days: 29 }]);
  });

  it('is the side view, the bare work, and a second day', () => {
    const fins = aSeasonSwim({ ...recent, view: 'below', work: { aids: ['fins'] } });
    expect(codes(swimmer, [fins], [], today)).toEqual(['no-side-view', 'without-aids', 'only-one']);
  });

  it('is full effort after the count was lost, until it has been filmed', () => {
    const practice = aPractice({
      date: '2026-05-27',
      log: [
        anEntry({ effort: 'easy', count: 8 }),
        anEntry({ id: 'log-2', repeat: 1, effort: 'full', count: 10 }),
      ],
    });
    expect(filmNext(swimmer, twice, [practice], today)).toEqual([
      { code: 'count-lost', practiceId: 'practice-1', day: '2026-05-27', more: 2 },
    ]);
    const filmed = [...twice, aSeasonSwim({ day: '2026-05-28', effort: 'full' })];
    expect(filmNext(swimmer, filmed, [practice], today)).toEqual([]);
  });

  it('is work that was much practised and never filmed, but nothing under water', () => {
    const log = Array.from({ length: 20 }, (_, repeat) =>
      anEntry({ id: `log-${repeat}`, repeat, count: null }),
    );
    const practice = (change = {}, date = '2026-05-27') =>
      aPractice({ date, items: [anItem({ repeats: 20, drillId: 'kick-in-kick-out', ...change })], log });
    expect(filmNext(swimmer, twice, [practice()], today)).toMatchObject([
      { code: 'practised-not-filmed', metres: 500, work: { drill: 'kick-in-kick-out' } },
    ]);
    expect(filmNext(swimmer, twice, [practice({ underwater: true })], today)).toEqual([]);
    expect(filmNext(swimmer, twice, [practice({ stroke: 'other' })], today)).toEqual([]);
    expect(filmNext(swimmer, twice, [practice({ distanceMetres: 15 })], today)).toEqual([]);
    expect(filmNext(swimmer, twice, [practice({}, '2026-05-03')], today)).toEqual([]);
    expect(filmNext(swimmer, twice, [practice({}, '2026-06-03')], today)).toEqual([]);
  });

  it('knows a drill by its name on the card and by its id in the practice', () => {
    const log = Array.from({ length: 20 }, (_, repeat) => anEntry({ id: `log-${repeat}`, repeat }));
    const items = [anItem({ repeats: 20, drillId: 'kick-in-kick-out' })];
    const practice = aPractice({ date: '2026-05-27', items, log });
    const filmedOn = (day: string, drill: string) => {
      const card = { ...aSwim().card, swimmerId: 'swimmer-1', date: day, aids: [], drill };
      return seasonSwim({ id: `swim-${day}`, card }, [aReading(2)], []);
    };
    const filmed = ['2026-05-20', '2026-05-28'].map((day) => filmedOn(day, ' Kick in,  KICK out'));
    expect(filmed[0]?.readings.get('kick-frequency')?.value).toBe(2);
    expect(filmNext(swimmer, [...twice, ...filmed], [practice], today)).toEqual([]);
    const others = ['2026-05-20', '2026-05-28'].map((day) => filmedOn(day, 'Another drill'));
    expect(codes(swimmer, [...twice, ...others], [practice], today)).toEqual(['practised-not-filmed']);
  });

  it('is more cycles, and readings that have a target; never a target under water', () => {
    const few = [
      aSeasonSwim({ day: '2026-05-20' }),
      aSeasonSwim({ ...recent, reading: aReading(2, { cycles: 5 }) }),
    ];
    expect(codes(swimmer, few, [], today)).toEqual(['few-cycles']);
    const target = (reading: string) => ({
      id: 'swimmer-1',
      targets: [{ reading, low: 1, high: 2, from: null }],
    });
    expect(filmNext(target('stroke-count'), twice, [], today)).toEqual([
      { code: 'target-without-reading', readingId: 'stroke-count' },
    ]);
    expect(filmNext(target('underwater-time'), twice, [], today)).toEqual([]);
    expect(filmNext(target('kick-frequency'), twice, [], today)).toEqual([]);
  });

  it('has words for every rule', () => {
    const { work } = aSeasonSwim({ work: { aids: ['fins'] } });
    const every: { readonly [Code in FilmNext['code']]: Extract<FilmNext, { code: Code }> } = {
      'never-filmed': { code: 'never-filmed' },
      'long-ago': { code: 'long-ago', lastDay: '2026-01-01', days: 40 },
      'no-side-view': { code: 'no-side-view' },
      'count-lost': { code: 'count-lost', practiceId: 'p', day: '2026-05-01', more: 2 },
      'without-aids': { code: 'without-aids', work },
      'practised-not-filmed': { code: 'practised-not-filmed', work, metres: 500 },
      'target-without-reading': { code: 'target-without-reading', readingId: 'stroke-count' },
      'few-cycles': { code: 'few-cycles', swimId: 's', cycles: 3 },
      'only-one': { code: 'only-one', work, day: '2026-05-01' },
    };
    const words = { readingLabel: () => 'Strokes in the length', workWords: () => 'Butterfly' };
    for (const each of Object.values(every)) expect(filmNextWords(each, words)).toMatch(/\.$/);
  });
});

describe('the squad over a season', () => {
  it('puts who was never filmed first, then the longest ago, then by name', () => {
    const swimmers = ['d', 'c', 'b', 'a'].map((id) => ({ id, name: id.toUpperCase() }));
    const swims = [
      { swimmerId: 'c', day: '2026-05-01' },
      { swimmerId: 'c', day: '2026-05-20' },
      { swimmerId: 'd', day: '2026-05-10' },
      { swimmerId: 'b', day: '2026-07-01' },
      { swimmerId: null, day: '2026-05-30' },
    ];
    const rows = squadSeason(swimmers, swims, [], { from: '2026-05-01', to: '2026-05-31' });
    expect(rows.map(({ swimmerId, daysSinceFilm }) => [swimmerId, daysSinceFilm])).toEqual([
      ['a', null],
      ['b', null],
      ['d', 21],
      ['c', 11],
    ]);
  });

  it('shows whose aided metres are not matched, from what was logged', () => {
    const practice = aPractice({
      swimmerIds: ['a', 'b'],
      items: [anItem({ aids: ['fins'] })],
      log: [anEntry({ swimmerId: 'a' })],
    });
    const swimmers = [
      { id: 'a', name: 'A' },
      { id: 'b', name: 'B' },
    ];
    const rows = squadSeason(swimmers, [], [practice], { from: '2026-05-01', to: '2026-05-31' });
    expect(rows.map(({ totals }) => totals.shortfallMetres)).toEqual([25, 0]);
  });
});
