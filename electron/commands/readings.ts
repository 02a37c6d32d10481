import { sixDigits } from '#core/exporting/csv-text';
import { readingsCsv, readingsJson } from '#core/exporting/readings-csv';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import { definitionOn } from '#core/measures/definition-on';
import { formatReading } from '#core/measures/format-reading';
import { catalogue } from '#core/measures/families';
import type { Reading, ReadingDefinition } from '#core/measures/reading';
import { doubtsInWords } from '#core/measures/doubtful';
import { noteWords, reasonWords } from '#core/measures/reason-words';
import { runCommand, stop } from './command-end';
import { readSwimOnDisk, sayDoubt } from './swim-on-disk';
import { commandLineWords } from '#core/words/command-line';

const usage = commandLineWords('usageNpmRunSReadings');

await runCommand(async () => {
  const args = process.argv.slice(2);
  const flags = args.filter((each) => each.startsWith('--'));
  const [target, ...rest] = args.filter((each) => !each.startsWith('--'));
  if (
    target === undefined ||
    rest.length > 0 ||
    flags.length > 1 ||
    flags.some((each) => each !== '--json' && each !== '--csv')
  )
    return stop(2, usage);
  const { swim, knowledge } = await readSwimOnDisk(target);
  const readings = computeReadings(readingContext(swim, knowledge));
  sayDoubt(swim, readings);
  const definitions = catalogue.map((each) => definitionOn(each, swim.card));
  if (flags[0] === '--json') console.log(readingsJson(swim, readings));
  else if (flags[0] === '--csv') process.stdout.write(readingsCsv(readings, definitions));
  else console.log(asTable(readings, definitions));
});

function asTable(all: readonly Reading[], definitions: readonly ReadingDefinition[]): string {
  const labels = new Map(definitions.map((each) => [each.id, each]));
  return all
    .map((each) => {
      const label = (labels.get(each.id)?.label ?? each.id).padEnd(44);
      if (each.status === 'missing') return `${label} —  ${each.reasons.map(reasonWords).join('; ')}`;
      const { spread: printed } = formatReading(each, labels.get(each.id)?.digits ?? 2);
      const half = (each.interval.high - each.interval.low) / 2;
      const around = printed.startsWith('±')
        ? `± ${Number(half.toPrecision(2))}`
        : commandLineWords('to', {
            sixDigits: sixDigits(each.interval.low),
            sixDigits2: sixDigits(each.interval.high),
          });
      const events = each.from.eventIds.length;
      const frames = each.from.postureFrames.length;
      const source = commandLineWords('eventsPostures', { events, frames });
      const cycles = commandLineWords('cycles', { cycles: each.cycles });
      const spread = each.singles
        ? commandLineWords('sd', { sd: Number(each.singles.sd.toPrecision(2)) })
        : '';
      const mind = each.notes.length > 0 ? `  ! ${each.notes.map(noteWords).join('; ')}` : '';
      const doubts = doubtsInWords(each);
      const doubtful =
        doubts.length > 0 ? `  ? ${commandLineWords('doubtful', { doubts: doubts.join('; ') })}` : '';
      const from = commandLineWords('from95', {
        question: each.interval.question,
        cycles,
        spread,
        source,
      });
      return `${label} ${sixDigits(each.value)} ${around} ${each.unit}  ${from}${doubtful}${mind}`;
    })
    .join('\n');
}
