import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { regimes, type Telling } from './incomplete/regimes';
import { computedIn, type RegimeScore, scoreSwim, summed } from './incomplete/score-regime';
import { noOutcome, type Outcome } from './incomplete/tally';
import { writeSection } from '../write-section';

// What becomes of readings where marks are incomplete or wrong:
// `npx tsx --tsconfig tests/tsconfig.json tests/bench/readings/incomplete.ts [swims a regime] [first seed] [write] [--counts file]`
// One process draws swim after swim and spoils each in every way; every few swims its counts are added to those of the file, so that
// a run may be stopped and gone on with, with other seeds. Swims 0 with `write` only writes what was counted into
// docs/incomplete-marking.md.

const { values: options, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    counts: {
      type: 'string',
      default: fileURLToPath(new URL('../../../.build/incomplete-marking.json', import.meta.url)),
    },
  },
});
const [swims = 100, first = 1] = positionals.slice(0, 2).map(Number);
const write = positionals.includes('write');

/** Swims between two additions to the file. */
const chunk = 20;

type Scores = Record<string, Record<string, Outcome>>;
interface Counted {
  readonly swims: number;
  /** First seed and number of each run, those next to one another joined. */
  readonly seeds: readonly (readonly [number, number])[];
  readonly scores: Scores;
}

const read = (): Counted =>
  existsSync(options.counts)
    ? (JSON.parse(readFileSync(options.counts, 'utf8')) as Counted)
    : { swims: 0, seeds: [], scores: {} };

/** Adds the outcomes of the swims of some seeds to the file, which is whole at any moment. */
function countChunk(from: number, many: number): void {
  const found = new Map(regimes.map(({ name }): [string, RegimeScore] => [name, new Map()]));
  for (let seed = from; seed < from + many; seed++)
    for (const regime of regimes) scoreSwim(regime, seed, found.get(regime.name) ?? new Map());
  const { swims: before, seeds, scores } = read();
  for (const [name, readings] of found) {
    const into = scores[name] ?? {};
    scores[name] = into;
    for (const [id, tally] of readings) into[id] = summed([into[id] ?? noOutcome(), tally]);
  }
  const last = seeds.at(-1);
  const joined: Counted['seeds'] =
    last && last[0] + last[1] === from
      ? [...seeds.slice(0, -1), [last[0], last[1] + many]]
      : [...seeds, [from, many]];
  mkdirSync(path.dirname(options.counts), { recursive: true });
  writeFileSync(`${options.counts}.new`, JSON.stringify({ swims: before + many, seeds: joined, scores }));
  renameSync(`${options.counts}.new`, options.counts);
}

const tellings: Readonly<Record<Telling, string>> = {
  whole: 'Everything marked',
  told: 'Marks that contradict themselves or each other, or leave gaps others fill',
  untold: 'Nothing in the marks can tell, but what people can swim',
};

const percent = (part: number, of: number, digits = 1): string =>
  of === 0 ? '–' : ((100 * part) / of).toFixed(digits);

function table({ swims: drawn, seeds, scores }: Counted): string[] {
  const row = (name: string, tally: Outcome, many: number | string): string => {
    const all = computedIn(tally) + tally.refused;
    return `| ${name} | ${many} | ${percent(computedIn(tally), all)} | ${percent(tally.held, all)} | ${percent(tally.near, all)} | ${percent(tally.doubted, all)} | ${percent(tally.refused, all)} | ${percent(tally.missed, computedIn(tally) - tally.doubted)} | ${percent(tally.gross, computedIn(tally), 2)} | ${percent(tally.sure, computedIn(tally), 2)} |`;
  };
  const head = (what: string): string[] => [
    `| ${what} | swims | computed | held | near | doubted | refused | missed, % of undoubted | gross, % of computed | gross and beyond twice the interval, % of computed |`,
    '| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |',
  ];
  const lines = [`Seeds ${seeds.map(([from, many]) => `${from} to ${from + many - 1}`).join(', ')}.`];
  for (const telling of ['whole', 'told', 'untold'] as const) {
    lines.push('', `## ${tellings[telling]}`, '', ...head('marking'));
    for (const { name } of regimes.filter((each) => each.telling === telling))
      lines.push(row(name, summed(Object.values(scores[name] ?? {})), drawn));
  }
  lines.push('', '## Reading by reading, all ways in which marks can tell', '', ...head('reading'));
  const told = regimes.filter((each) => each.telling === 'told').map(({ name }) => scores[name] ?? {});
  for (const id of new Set(told.flatMap((each) => Object.keys(each))))
    lines.push(row(id, summed(told.flatMap((each) => each[id] ?? [])), ''));
  return lines;
}

for (let done = 0; done < swims; done += chunk) countChunk(first + done, Math.min(chunk, swims - done));
const lines = table(read());
if (write) writeSection('incomplete-marking', 'readings/incomplete.ts', lines, 'incomplete-marking');
console.log(lines.join('\n'));
