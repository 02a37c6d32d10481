import type { DrillBook } from '#core/practice/drill-file';
import { practiceSchema, type Practice } from '#core/practice/practice-schema';
import type { Trial } from '#core/practice/trial-schema';
import type { CoachFile } from '#core/swim-file/coach-file';
import type { ConditionTags } from '#core/swim-file/condition-tags';
import type { Squad } from '#core/swim-file/squad-schema';
import type { Swim } from '#core/swim-file/swim-schema';
import { type Traces, wordPattern } from './swimmer-traces';
import { hostJobsWords } from '#core/words/host-jobs';

/** Stands where a name stood in words of the coach's. */
const erasedWord = '[erased]';

/** A document without the swimmer, and what was taken out of it in words; null when nothing of theirs is in it. */
export interface Without<T> {
  readonly value: T;
  readonly words: readonly string[];
}

const times = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

interface Replacing {
  readonly text: <T extends string>(text: T) => T;
  readonly count: () => number;
}

function replacing(name: string): Replacing {
  let count = 0;
  const pattern = name.trim() === '' ? null : wordPattern(name);
  return {
    text: (text) =>
      (pattern === null
        ? text
        : text.replace(pattern, () => {
            count += 1;
            return erasedWord;
          })) as typeof text,
    count: () => count,
  };
}

/** Tags of a trial's conditions, which the coach writes; a file holds no longer ones than this. */
const longestTag = 60;
const tagsWithout = (tags: ConditionTags, words: Replacing): ConditionTags => ({
  ...tags,
  free: tags.free.map((tag) => words.text(tag).slice(0, longestTag)),
});

const named = (count: number): string[] =>
  count > 0 ? [hostJobsWords('nameYourOwnWords', { times: times(count, 'time', 'times') })] : [];

/** Out of who swims, of each item, of the log with counts and times, and of the coach's words. */
export function practiceWithout(practice: Practice, traces: Traces): Without<Practice> | null {
  const { swimmerId, swimIds } = traces;
  const words = replacing(traces.name);
  // a log entry that names nobody is the swimmer's when the practice had no other
  const alone = practice.swimmerIds.length === 1 && practice.swimmerIds[0] === swimmerId;
  const log = practice.log.filter(
    (entry) =>
      entry.swimmerId !== swimmerId &&
      !(alone && entry.swimmerId === null) &&
      !(entry.swimId !== null && swimIds.has(entry.swimId)),
  );
  const listed =
    practice.swimmerIds.includes(swimmerId) ||
    practice.items.some(({ swimmerIds }) => swimmerIds?.includes(swimmerId));
  const value = practiceSchema.parse({
    ...practice,
    title: words.text(practice.title),
    note: words.text(practice.note),
    swimmerIds: practice.swimmerIds.filter((id) => id !== swimmerId),
    items: practice.items.map((item) => ({
      ...item,
      words: words.text(item.words),
      note: words.text(item.note),
      tags: tagsWithout(item.tags, words),
      swimmerIds: item.swimmerIds?.filter((id) => id !== swimmerId) ?? null,
    })),
    log: log.map((entry) => ({ ...entry, note: words.text(entry.note) })),
  });
  const said = [
    ...(listed ? [hostJobsWords('swimmerAmongThose')] : []),
    ...(log.length < practice.log.length
      ? [times(practice.log.length - log.length, hostJobsWords('logEntry'), hostJobsWords('logEntries'))]
      : []),
    ...named(words.count()),
  ];
  return said.length > 0 ? { value, words: said } : null;
}

/** Out of a trial's rows, its tags, its question and the coach's words. */
export function trialWithout(trial: Trial, traces: Traces): Without<Trial> | null {
  const words = replacing(traces.name);
  const rows = trial.rows
    .filter(({ swimId }) => !traces.swimIds.has(swimId))
    .map((row) => ({ ...row, tags: tagsWithout(row.tags, words) }));
  const short = (text: string): string => words.text(text).slice(0, longestTag);
  const { factor, plan } = trial;
  const value: Trial = {
    ...trial,
    title: words.text(trial.title),
    note: words.text(trial.note),
    factor: factor.of === 'tag' ? { ...factor, tag: short(factor.tag) } : factor,
    plan: plan && { ...plan, conditions: plan.conditions.map(short) },
    rows,
  };
  const said = [
    ...(rows.length < trial.rows.length ? [times(trial.rows.length - rows.length, 'repeat', 'repeats')] : []),
    ...named(words.count()),
  ];
  return said.length > 0 ? { value, words: said } : null;
}

/** The coach's own marking error stays, and no longer says on whose swim it was measured. */
export function coachWithout(coach: CoachFile, { swimIds }: Traces): Without<CoachFile> | null {
  const count = coach.remarkings.filter(({ swimId }) => swimIds.has(swimId)).length;
  if (count === 0) return null;
  return {
    value: {
      ...coach,
      remarkings: coach.remarkings.map((each) =>
        swimIds.has(each.swimId) ? { ...each, swimId: 'erased' } : each,
      ),
    },
    words: [hostJobsWords('whoseSwimMade', { times: times(count, 're-marking', 're-markings') })],
  };
}

export function squadWithout(squad: Squad, { swimmerId }: Traces): Without<Squad> | null {
  const swimmers = squad.swimmers.filter(({ id }) => id !== swimmerId);
  if (swimmers.length === squad.swimmers.length) return null;
  return { value: { ...squad, swimmers }, words: [hostJobsWords('swimmerConsentTargets')] };
}

/** Another swimmer's swim whose card's words mention the name. */
export function swimWithout(swim: Swim, traces: Traces): Without<Swim> | null {
  const words = replacing(traces.name);
  const card = {
    ...swim.card,
    note: words.text(swim.card.note),
    drill: words.text(swim.card.drill),
    conditions: tagsWithout(swim.card.conditions, words),
  };
  return words.count() > 0 ? { value: { ...swim, card }, words: named(words.count()) } : null;
}

/** Out of the coach's own words on drills and patterns. A name taken out may leave a text a little longer: it is cut. */
export function drillsWithout(book: DrillBook, traces: Traces): Without<DrillBook> | null {
  const words = replacing(traces.name);
  const cut = (text: string, most: number): string => words.text(text).slice(0, most);
  const value: DrillBook = {
    ...book,
    drills: book.drills.map((drill) => ({
      ...drill,
      name: cut(drill.name, 120),
      purpose: cut(drill.purpose, 1000),
      how: cut(drill.how, 2000),
      watch: drill.watch.map((each) => cut(each, 300)),
      source: cut(drill.source, 200),
    })),
    patterns: book.patterns.map((pattern) => ({ ...pattern, label: cut(pattern.label, 120) })),
  };
  return words.count() > 0 ? { value, words: named(words.count()) } : null;
}
