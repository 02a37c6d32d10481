import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import { firstDrillBook, parseDrillBook, serialiseDrillBook } from '#core/practice/drill-file';
import { parsePractice } from '#core/practice/practice-file';
import { parseTrial } from '#core/practice/trial-schema';
import { parseCoach } from '#core/swim-file/coach-file';
import type { Parsed } from '#core/swim-file/parse-file';
import { parseSquad } from '#core/swim-file/squad-file';
import { parseSwim, serialiseSwim } from '#core/swim-file/swim-file';
import { mutateText, mutateValue, type Random } from './mutate';
import type { FuzzTarget } from './run-fuzz';

const project = fileURLToPath(new URL('../../', import.meta.url));
const textOf = (file: string): string => readFileSync(`${project}${file}`, 'utf8');
const frozen = (name: string): string => textOf(`tests/shared-core/swim-file/frozen/${name}`);
/** Frozen files of the practice folder's tests whose name begins so. */
const practiceFiles = (name: string): readonly string[] => {
  const folder = 'tests/shared-core/practice/frozen';
  return readdirSync(`${project}${folder}`)
    .filter((each) => each.startsWith(name))
    .map((each) => textOf(`${folder}/${each}`));
};
const faults = ['not-json', 'other-format', 'newer-version', 'damaged'];

/** A mangled file: one or a few places of its JSON changed, or its text torn. */
function mangled(random: Random, text: string): string {
  if (random() < 0.3) return mutateText(random, text);
  let value: unknown = JSON.parse(text);
  for (let i = 0; i <= Math.floor(random() ** 2 * 4); i++) value = mutateValue(random, value);
  return JSON.stringify(value) ?? 'null';
}

function fileTarget<T>(
  name: string,
  texts: readonly string[],
  parse: (text: string) => Parsed<T>,
  thenWith: (value: T) => void = () => undefined,
): FuzzTarget {
  return {
    name,
    run(random, note) {
      const text = mangled(random, texts[Math.floor(random() * texts.length)] ?? '');
      note(text);
      const parsed = parse(text);
      if (parsed.ok) thenWith(parsed.value);
      else if (!faults.includes(parsed.fault.code)) throw new Error(`no such fault: ${parsed.fault.code}`);
    },
  };
}

/** Every number of every reading is finite, and an interval holds its value. */
function readingsHold(text: string): void {
  const parsed = parseSwim(text);
  if (!parsed.ok)
    throw new Error(`a file that was read is written as one that can't be: ${parsed.fault.code}`);
  const context = readingContext(parsed.value, { swimmer: null, markingError: null });
  for (const reading of computeReadings(context)) {
    if (reading.status !== 'computed') continue;
    const { value, interval } = reading;
    if (![value, interval.low, interval.high].every(Number.isFinite))
      throw new Error(`${reading.id} is ${value} within ${interval.low} and ${interval.high}`);
    if (interval.low > value || interval.high < value)
      throw new Error(`${reading.id} is outside its interval`);
  }
}

export const fileTargets: readonly FuzzTarget[] = [
  fileTarget(
    'swim.json',
    [
      frozen('swim-v1.json'),
      frozen('swim-v2.json'),
      textOf('sample-clips/library/swims/sample-arms-folded/swim.json'),
    ],
    parseSwim,
    (swim) => readingsHold(serialiseSwim(swim)),
  ),
  fileTarget('squad.json', [frozen('squad-v1.json'), frozen('squad-v2.json')], parseSquad),
  fileTarget('coach.json', [frozen('coach-v1.json'), frozen('coach-v2.json')], parseCoach),
  fileTarget('practice', practiceFiles('practice'), parsePractice),
  fileTarget('trial', practiceFiles('trial'), parseTrial),
  fileTarget('drills.json', [serialiseDrillBook(firstDrillBook)], parseDrillBook),
];
