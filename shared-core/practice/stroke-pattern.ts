import { type PatternArm, patternRunsSchema, type StrokePattern } from './practice-schema';
import { practiceWords } from '../words/practice';

type Runs = StrokePattern['runs'];

/** Why words are no stroke pattern; closed. `at`: place of the word in the text, from 0. */
export type PatternFault =
  | { readonly code: 'empty' }
  | { readonly code: 'unreadable'; readonly word: string; readonly at: number }
  | { readonly code: 'number-without-arm'; readonly number: number }
  | { readonly code: 'arm-without-number'; readonly arm: PatternArm }
  | { readonly code: 'count-out-of-range'; readonly number: number }
  | { readonly code: 'too-many-runs' };

export type ParsedPattern =
  | { readonly ok: true; readonly runs: Runs }
  | { readonly ok: false; readonly fault: PatternFault };

const armWords: Readonly<Record<string, PatternArm>> = {
  right: 'right',
  r: 'right',
  left: 'left',
  l: 'left',
  both: 'both',
  b: 'both',
};
const numberWords = 'one two three four five six seven eight nine ten eleven twelve'.split(' ');
const fillers = new Set([
  'and',
  'then',
  'arm',
  'arms',
  'stroke',
  'strokes',
  ',',
  '+',
  '-',
  '–',
  '/',
  ';',
  '.',
  '·',
]);

/**
 * A stroke pattern from words such as "2 right 2 left 4 both", "two right, two left, four both" or "2R 2L 4B". Three
 * bare numbers ("2+2+4") are read right, left, both. Neighbouring runs of one arm stay apart as written.
 */
export function parsePattern(text: string): ParsedPattern {
  const runs: Runs = [];
  const bare: number[] = [];
  let number: number | null = null;
  for (const { 0: word, index } of text.toLowerCase().matchAll(/\d+|\p{L}+|[^\s\d\p{L}]/gu)) {
    if (fillers.has(word)) continue;
    const arm = Object.hasOwn(armWords, word) ? armWords[word] : undefined;
    const read = numberOf(word);
    if (arm) {
      if (number === null) return fault({ code: 'arm-without-number', arm });
      runs.push({ arm, count: number });
      number = null;
    } else if (read !== null) {
      if (read < 1 || read > 50) return fault({ code: 'count-out-of-range', number: read });
      if (number !== null) bare.push(number);
      number = read;
    } else return fault({ code: 'unreadable', word, at: index });
  }
  if (number !== null) bare.push(number);
  return ordered(runs, bare);
}

function ordered(runs: Runs, bare: readonly number[]): ParsedPattern {
  const [right, left, both] = bare;
  if (runs.length === 0 && bare.length === 3 && right && left && both)
    return {
      ok: true,
      runs: [
        { arm: 'right', count: right },
        { arm: 'left', count: left },
        { arm: 'both', count: both },
      ],
    };
  if (right !== undefined) return fault({ code: 'number-without-arm', number: right });
  if (runs.length === 0) return fault({ code: 'empty' });
  if (!patternRunsSchema.safeParse(runs).success) return fault({ code: 'too-many-runs' });
  return { ok: true, runs };
}

function numberOf(word: string): number | null {
  if (/^\d+$/.test(word)) return Number(word);
  const place = numberWords.indexOf(word);
  return place < 0 ? null : place + 1;
}

const fault = (what: PatternFault): ParsedPattern => ({ ok: false, fault: what });

/** "2 right, 2 left, 4 both"; `parsePattern` of it gives the runs back. */
export function patternPhrase(runs: Runs): string {
  return runs.map(({ arm, count }) => `${count} ${arm}`).join(', ');
}

/** What a fault means for whoever typed the pattern. */
export function patternFaultWords(fault: PatternFault): string {
  switch (fault.code) {
    case 'empty':
      return practiceWords('writeStrokesOrder');
    case 'unreadable':
      return practiceWords('neitherNumberNor', { word: fault.word });
    case 'number-without-arm':
      return practiceWords('whichArmSwims', { number: fault.number });
    case 'arm-without-number':
      return practiceWords('howManyStrokes', { arm: fault.arm });
    case 'count-out-of-range':
      return practiceWords('runHas150Strokes', { number: fault.number });
    case 'too-many-runs':
      return practiceWords('patternHasTwelve');
  }
}

/** Strokes of one pass through the pattern, by arm and in all. */
export function patternStrokes(runs: Runs): Readonly<Record<PatternArm | 'all', number>> {
  const by = { right: 0, left: 0, both: 0, all: 0 };
  for (const { arm, count } of runs) {
    by[arm] += count;
    by.all += count;
  }
  return by;
}

/**
 * Passes through the pattern in `metres`; null when the pattern runs on to the wall, or does not come out whole: two
 * and a half patterns imply no count.
 */
export function patternPasses(pattern: StrokePattern, metres: number): number | null {
  if (pattern.perMetres === null || !(metres > 0)) return null;
  const passes = metres / pattern.perMetres;
  const whole = Math.round(passes);
  return whole >= 1 && Math.abs(passes - whole) < 1e-6 ? whole : null;
}

/** Strokes the pattern implies for `metres`; null as in `patternPasses`. */
export function patternCount(pattern: StrokePattern, metres: number): number | null {
  const passes = patternPasses(pattern, metres);
  return passes === null ? null : passes * patternStrokes(pattern.runs).all;
}
