import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { sixDigits } from '#core/exporting/csv-text';
import { readingsCsv, readingsJson } from '#core/exporting/readings-csv';
import { errorWords } from '#core/host-contract/error-words';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import { catalogue } from '#core/measures/families';
import type { Reading } from '#core/measures/reading';
import { reasonWords } from '#core/measures/reason-words';
import { parseCoach } from '#core/swim-file/coach-file';
import { parseSquad } from '#core/swim-file/squad-file';
import type { Swimmer } from '#core/swim-file/squad-schema';
import { parseSwim } from '#core/swim-file/swim-file';
import type { Swim } from '#core/swim-file/swim-schema';
import { coachMarkingError } from '#core/uncertainty/coach-marking-error';
import type { MarkingError } from '#core/uncertainty/marking-error';
import { faultFailure } from '../host/kept-file';

const usage = 'Usage: npm run -s readings -- <swim folder or swim.json> [--json|--csv]';

function stop(code: 1 | 2, words: string): never {
  console.error(words);
  process.exit(code);
}

const args = process.argv.slice(2);
const flags = args.filter((each) => each.startsWith('--'));
const [target, ...rest] = args.filter((each) => !each.startsWith('--'));
if (
  target === undefined ||
  rest.length > 0 ||
  flags.length > 1 ||
  flags.some((each) => each !== '--json' && each !== '--csv')
)
  stop(2, usage);

const swim = await readSwim(target);
const swimmer = await readSwimmer(target, swim);
const markingError = await readMarkingError(target, swim);
const readings = computeReadings(readingContext(swim, { swimmer, markingError }));
const labels = new Map(catalogue.map((each) => [each.id, each]));
if (flags[0] === '--json') console.log(readingsJson(swim.id, readings));
else if (flags[0] === '--csv') process.stdout.write(readingsCsv(readings, catalogue));
else console.log(asTable(readings));

async function swimFile(at: string): Promise<string> {
  const facts = await stat(at).catch(() =>
    stop(1, `${at} is not there. Give a swim’s folder or its swim.json.`),
  );
  return facts.isDirectory() ? path.join(at, 'swim.json') : at;
}

async function readSwim(at: string): Promise<Swim> {
  const file = await swimFile(at);
  const text = await readFile(file, 'utf8').catch(() => stop(1, `${file} can’t be read.`));
  const parsed = parseSwim(text);
  if (parsed.ok) return parsed.value;
  const failed = faultFailure(parsed.fault, { damaged: 'swim-damaged', newer: 'swim-newer-version' }, file);
  if (failed.ok) throw new Error('a fault is never a success');
  stop(1, `${file}: ${errorWords(failed.error).what}`);
}

async function libraryOf(at: string): Promise<string> {
  return path.resolve(path.dirname(await swimFile(at)), '..', '..');
}

/** The coach's own marking error, when the swim lies in a library with a coach file; null: it is assumed. */
async function readMarkingError(at: string, of: Swim): Promise<MarkingError | null> {
  const text = await readFile(path.join(await libraryOf(at), 'coach.json'), 'utf8').catch(() => null);
  const coach = text === null ? null : parseCoach(text);
  return coach?.ok ? coachMarkingError(coach.value, of.clip.height) : null;
}

/** The swimmer's record, when the swim lies in a library with a squad file. */
async function readSwimmer(at: string, of: Swim): Promise<Swimmer | null> {
  const text = await readFile(path.join(await libraryOf(at), 'squad.json'), 'utf8').catch(() => null);
  const squad = text === null ? null : parseSquad(text);
  if (!squad?.ok) return null;
  return squad.value.swimmers.find((each) => each.id === of.card.swimmerId) ?? null;
}

function asTable(all: readonly Reading[]): string {
  return all
    .map((each) => {
      const label = (labels.get(each.id)?.label ?? each.id).padEnd(44);
      if (each.status === 'missing') return `${label} —  ${each.reasons.map(reasonWords).join(' ')}`;
      const half = (each.interval.high - each.interval.low) / 2;
      const events = each.from.eventIds.length;
      const frames = each.from.postureFrames.length;
      const source = `${events} event${events === 1 ? '' : 's'}, ${frames} posture${frames === 1 ? '' : 's'}`;
      return `${label} ${sixDigits(each.value)} ± ${Number(half.toPrecision(2))} ${each.unit}  (95 %, ${each.interval.question}; ${each.cycles} cycles; from ${source})`;
    })
    .join('\n');
}
