import type { Swimmer } from '../swim-file/squad-schema';
import { targetInForce } from '../swim-file/target-in-force';
import { countsHeld } from './count-held';
import { daysBetween } from './days-between';
import { neverCompared } from '../measures/never-compared';
import type { Practice } from './practice-schema';
import type { SeasonSwim } from './season-swim';
import { type SwumPart, swumParts } from './swum-part';
import { advisedKickCycles } from './trial-warning';
import { aidsKey, likeKey, type Work, workKey } from './work';
import { practiceWords } from '../words/practice';

/** Something worth filming next, and the rule that says so; closed. */
export type FilmNext =
  | { readonly code: 'never-filmed' }
  | { readonly code: 'long-ago'; readonly lastDay: string; readonly days: number }
  | { readonly code: 'no-side-view' }
  | { readonly code: 'count-lost'; readonly practiceId: string; readonly day: string; readonly more: number }
  | { readonly code: 'without-aids'; readonly work: Work }
  | { readonly code: 'practised-not-filmed'; readonly work: Work; readonly metres: number }
  | { readonly code: 'target-without-reading'; readonly readingId: string }
  | { readonly code: 'few-cycles'; readonly swimId: string; readonly cycles: number }
  | { readonly code: 'only-one'; readonly work: Work; readonly day: string };

export interface FilmNextRules {
  /** Days after which a film is old. */
  readonly oldAfterDays: number;
  /** Days of practice looked back on. */
  readonly practiceDays: number;
  /** Metres of one work in that time from which it should have been filmed. */
  readonly practisedMetres: number;
}

/** Our defaults, no source; the coach's to change. */
const assumedFilmNextRules: FilmNextRules = {
  oldAfterDays: 28,
  practiceDays: 28,
  practisedMetres: 400,
};

/**
 * What to film next of one swimmer, the most pressing first: rules, each told in words, no score. `today` is an ISO day
 * of the caller's; swims and practices after it are left out. Underwater items are never proposed: nobody goes under for
 * a camera because a rule says so.
 */
export function filmNext(
  swimmer: Pick<Swimmer, 'id' | 'targets'>,
  swims: readonly SeasonSwim[],
  practices: readonly Practice[],
  today: string,
  rules: FilmNextRules = assumedFilmNextRules,
): readonly FilmNext[] {
  const own = swims
    .filter(({ swimmerId, day }) => swimmerId === swimmer.id && day <= today)
    .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
  const recent = practices.filter(({ date }) => {
    const ago = daysBetween(date, today);
    return ago !== null && ago >= 0 && ago <= rules.practiceDays;
  });
  const latest = own.at(-1);
  const practised = practisedNotFilmed(swimmer.id, own, recent, rules);
  if (!latest) return [{ code: 'never-filmed' }, ...practised];
  return [
    ...longAgo(latest, today, rules),
    ...(own.some(({ view }) => view === 'side') ? [] : [{ code: 'no-side-view' } as const]),
    ...countLost(swimmer.id, own, recent),
    ...withoutAids(own),
    ...practised,
    ...targetsWithoutReading(swimmer, own),
    ...fewCycles(latest),
    ...onlyOne(own),
  ];
}

function longAgo(latest: SeasonSwim, today: string, rules: FilmNextRules): readonly FilmNext[] {
  const days = daysBetween(latest.day, today);
  return days !== null && days > rules.oldAfterDays ? [{ code: 'long-ago', lastDay: latest.day, days }] : [];
}

/** The latest practice in which the count was lost, unless full effort has been filmed since. */
function countLost(
  swimmerId: string,
  own: readonly SeasonSwim[],
  recent: readonly Practice[],
): readonly FilmNext[] {
  const lost = recent
    .flatMap((practice) => {
      const mine = countsHeld(practice).compared.filter(
        (each) => each.swimmerId === swimmerId && each.verdict === 'lost',
      );
      const more = Math.max(0, ...mine.map((each) => each.more));
      return more > 0
        ? [{ code: 'count-lost', practiceId: practice.id, day: practice.date, more } as const]
        : [];
    })
    .sort((a, b) => (a.day < b.day ? 1 : -1))[0];
  if (!lost || own.some(({ effort, day }) => effort === 'full' && day >= lost.day)) return [];
  return [lost];
}

/** Work filmed with aids and never without. */
function withoutAids(own: readonly SeasonSwim[]): readonly FilmNext[] {
  const bare = new Set(own.filter(({ work }) => work.aids.length === 0).map(({ work }) => workKey(work)));
  return firstOfEach(own.filter(({ work }) => work.aids.length > 0 && !bare.has(workKey(work)))).map(
    ({ work }) => ({
      code: 'without-aids',
      work: { ...work, aids: [] },
    }),
  );
}

function practisedNotFilmed(
  swimmerId: string,
  own: readonly SeasonSwim[],
  recent: readonly Practice[],
  rules: FilmNextRules,
): readonly FilmNext[] {
  const filmed = new Set(own.map(({ work }) => likeKey(work)));
  const metres = new Map<string, { work: Work; metres: number }>();
  for (const { work, metres: more } of recent.flatMap((practice) => partsToFilm(practice, swimmerId))) {
    const key = likeKey(work);
    if (!filmed.has(key)) metres.set(key, { work, metres: (metres.get(key)?.metres ?? 0) + more });
  }
  return [...metres.values()]
    .filter((each) => each.metres >= rules.practisedMetres)
    .sort((a, b) => b.metres - a.metres)
    .map((each) => ({ code: 'practised-not-filmed', ...each }));
}

function partsToFilm(practice: Practice, swimmerId: string): readonly SwumPart[] {
  const above = practice.items.filter((item) => !item.underwater && item.stroke !== 'other');
  return swumParts({ ...practice, items: above }, swimmerId, 'logged');
}

function targetsWithoutReading(
  swimmer: Pick<Swimmer, 'targets'>,
  own: readonly SeasonSwim[],
): readonly FilmNext[] {
  return [...new Set(swimmer.targets.map(({ reading }) => reading))]
    .filter((reading) => targetInForce(swimmer, reading))
    .filter((reading) => !neverCompared(reading) && !own.some(({ readings }) => readings.has(reading)))
    .map((reading) => ({ code: 'target-without-reading', readingId: reading }));
}

function fewCycles(latest: SeasonSwim): readonly FilmNext[] {
  const cycles = latest.readings.get('kick-frequency')?.cycles;
  return cycles !== undefined && cycles < advisedKickCycles
    ? [{ code: 'few-cycles', swimId: latest.swimId, cycles }]
    : [];
}

/** Ways of swimming filmed on one day only, so that no change can be told. */
function onlyOne(own: readonly SeasonSwim[]): readonly FilmNext[] {
  const days = new Map<string, Set<string>>();
  for (const { work, day } of own) {
    const key = likeKey(work);
    days.set(key, (days.get(key) ?? new Set()).add(day));
  }
  return firstOfEach(own)
    .filter(({ work }) => days.get(likeKey(work))?.size === 1)
    .map(({ work, day }) => ({ code: 'only-one', work, day }));
}

function firstOfEach(swims: readonly SeasonSwim[]): readonly SeasonSwim[] {
  const seen = new Map<string, SeasonSwim>();
  for (const swim of swims) if (!seen.has(likeKey(swim.work))) seen.set(likeKey(swim.work), swim);
  return [...seen.values()];
}

/** The rule in words; `readingLabel` gives a reading's own label by id, `workWords` a work's. */
export function filmNextWords(
  next: FilmNext,
  words: { readonly readingLabel: (id: string) => string; readonly workWords: (work: Work) => string },
): string {
  switch (next.code) {
    case 'never-filmed':
      return practiceWords('neverFilmedStart');
    case 'long-ago':
      return practiceWords('lastFilmedDays', { days: next.days, lastDay: next.lastDay });
    case 'no-side-view':
      return practiceWords('noFilmFromSide');
    case 'count-lost':
      return practiceWords('countLostAtFull', { day: next.day, more: next.more });
    case 'without-aids':
      return practiceWords('filmedAidsOnly', { workWords: words.workWords(next.work) });
    case 'practised-not-filmed':
      return practiceWords('mLatelyNever', {
        workWords: words.workWords(next.work),
        aidsKey: next.work.aids.length > 0 ? ` (${aidsKey(next.work.aids)})` : '',
        metres: Math.round(next.metres),
      });
    case 'target-without-reading':
      return practiceWords('hasTargetNoReading', { readingLabel: words.readingLabel(next.readingId) });
    case 'few-cycles':
      return practiceWords('latestFilmHas', { cycles: next.cycles, advisedKickCycles });
    case 'only-one':
      return practiceWords('filmedOnlySecond', { workWords: words.workWords(next.work), day: next.day });
  }
}
