import { levelOf, type TrialFactor, type TrialRow } from './trial-row';
import { trialWarningsWords } from '../words/trial-warnings';

/** Kick cycles advised a repeat: six gave ICC 0.81–0.996 (Connaboy et al. 2010, Med Sci Sports Exerc 42:762–770). */
export const advisedKickCycles = 6;

/** What may mislead in one contrast; closed. */
export type ContrastWarning =
  /** All of one condition were swum before any of the other: tiredness and learning are in the difference. */
  | { readonly code: 'one-condition-first'; readonly level: string }
  /** The two conditions share no day. */
  | { readonly code: 'different-days' }
  /** Another condition changed together with this one. */
  | { readonly code: 'other-condition-differs'; readonly factor: TrialFactor['of'] }
  | { readonly code: 'few-kick-cycles'; readonly swimIds: readonly string[] }
  | { readonly code: 'kick-cycles-unknown'; readonly swimIds: readonly string[] }
  /** The repeats agree better than they can be marked: more exact marks would help more than more repeats. */
  | { readonly code: 'mostly-marking' }
  /** Aids themselves are compared: a difference of tools, not of technique, and no rank. */
  | { readonly code: 'between-aids' };

/** What may mislead in a whole trial; closed. */
export type TrialWarning =
  /** Repeats with and without aids are in the trial; they are shown apart and never pooled. */
  | { readonly code: 'aids-kept-apart'; readonly aided: number; readonly unaided: number }
  | { readonly code: 'swimmers-kept-apart'; readonly swimmers: number }
  | { readonly code: 'level-not-said'; readonly swimIds: readonly string[] };

/** All that may mislead in a contrast of these repeats; `mostlyMarking`: marking alone gives the wider interval. */
export function contrastWarnings(
  factor: TrialFactor,
  first: readonly TrialRow[],
  second: readonly TrialRow[],
  mostlyMarking: boolean,
): readonly ContrastWarning[] {
  const warnings: ContrastWarning[] = [];
  if (factor.of === 'aids') warnings.push({ code: 'between-aids' });
  const early = allBefore(first, second) ? first : allBefore(second, first) ? second : [];
  const level = early[0] && levelOf(early[0], factor);
  if (level) warnings.push({ code: 'one-condition-first', level });
  const days = new Set(first.map(({ day }) => day));
  if (!second.some(({ day }) => days.has(day))) warnings.push({ code: 'different-days' });
  for (const of of ['head', 'hips', 'depth'] as const)
    if (of !== factor.of && steadyButDifferent(first, second, of))
      warnings.push({ code: 'other-condition-differs', factor: of });
  const rows = [...first, ...second];
  const few = rows.filter(({ kickCycles }) => kickCycles !== null && kickCycles < advisedKickCycles);
  const unknown = rows.filter(({ kickCycles }) => kickCycles === null);
  if (few.length > 0) warnings.push({ code: 'few-kick-cycles', swimIds: few.map(({ swimId }) => swimId) });
  if (unknown.length > 0)
    warnings.push({ code: 'kick-cycles-unknown', swimIds: unknown.map(({ swimId }) => swimId) });
  if (mostlyMarking) warnings.push({ code: 'mostly-marking' });
  return warnings;
}

/** All that may mislead in a trial by this factor; empty of a trial without repeats. */
export function trialWarnings(rows: readonly TrialRow[], factor: TrialFactor): readonly TrialWarning[] {
  const warnings: TrialWarning[] = [];
  const aided = rows.filter(({ work }) => work.aids.length > 0).length;
  if (factor.of !== 'aids' && aided > 0 && aided < rows.length)
    warnings.push({ code: 'aids-kept-apart', aided, unaided: rows.length - aided });
  const swimmers = new Set(rows.map(({ swimmerId }) => swimmerId)).size;
  if (swimmers > 1) warnings.push({ code: 'swimmers-kept-apart', swimmers });
  const unsaid = rows.filter((row) => levelOf(row, factor) === null);
  if (unsaid.length > 0)
    warnings.push({ code: 'level-not-said', swimIds: unsaid.map(({ swimId }) => swimId) });
  return warnings;
}

function allBefore(early: readonly TrialRow[], late: readonly TrialRow[]): boolean {
  return early.every((a) => late.every((b) => a.day < b.day || (a.day === b.day && a.order < b.order)));
}

/** One level all through the first repeats, another all through the second. */
function steadyButDifferent(
  first: readonly TrialRow[],
  second: readonly TrialRow[],
  of: 'head' | 'hips' | 'depth',
): boolean {
  const a = new Set(first.map((row) => row.tags[of]));
  const b = new Set(second.map((row) => row.tags[of]));
  return a.size === 1 && b.size === 1 && ![...a].some((level) => b.has(level));
}

const factorWords: Readonly<Record<TrialFactor['of'], string>> = {
  arms: 'arms',
  sideUp: trialWarningsWords('sideUp'),
  drill: 'drill',
  aids: 'aids',
  head: trialWarningsWords('headPosition'),
  hips: trialWarningsWords('hipPosition'),
  depth: 'depth',
  tag: 'tag',
};

/** A warning in words for the coach. */
export function trialWarningWords(warning: ContrastWarning | TrialWarning): string {
  switch (warning.code) {
    case 'one-condition-first':
      return trialWarningsWords('allRepeatsCame', { level: warning.level });
    case 'different-days':
      return trialWarningsWords('twoConditionsWere');
    case 'other-condition-differs':
      return trialWarningsWords('changedTogetherTwo', { factor: factorWords[warning.factor] });
    case 'few-kick-cycles':
      return trialWarningsWords('fewerThanKick', { advisedKickCycles, swims: swims(warning.swimIds.length) });
    case 'kick-cycles-unknown':
      return trialWarningsWords('noKicksMarked', { swims: swims(warning.swimIds.length) });
    case 'mostly-marking':
      return trialWarningsWords('repeatsAgreeBetter');
    case 'between-aids':
      return trialWarningsWords('comparesAidsNot');
    case 'aids-kept-apart':
      return trialWarningsWords('aidsWithoutShown', { aided: warning.aided, unaided: warning.unaided });
    case 'swimmers-kept-apart':
      return trialWarningsWords('swimmersEachCompared', { swimmers: warning.swimmers });
    case 'level-not-said':
      return trialWarningsWords('conditionNotSaid', { swims: swims(warning.swimIds.length) });
  }
}

function swims(count: number): string {
  return trialWarningsWords('swims', { count });
}
