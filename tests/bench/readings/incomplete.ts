import { fork } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { regimes, type Telling } from './incomplete/regimes';
import { computedIn, scoreSwim, summed } from './incomplete/score-regime';
import { noOutcome, type Outcome } from './incomplete/tally';
import { writeSection } from '../write-section';

// What becomes of readings where marks are incomplete or wrong. A long run is made of chunks, whose counts are kept and added up:
// `npx tsx --tsconfig tests/tsconfig.json tests/bench/readings/incomplete.ts [swims a regime] [first seed] [write]`; swims 0 with `write`
// only writes what was counted into docs/incomplete-marking.md

const [swims = 100, first = 1] = process.argv.slice(2, 4).map(Number);
const write = process.argv.includes('write');
const share = process.argv.find((each) => each.startsWith('--share='))?.slice(8);
const chunks = fileURLToPath(new URL('../../../.build/incomplete-marking.json', import.meta.url));

type Scores = Record<string, Record<string, Outcome>>;
interface Counted {
  readonly swims: Record<string, number>;
  readonly seeds: readonly (readonly [number, number])[];
  readonly scores: Scores;
}

function counted(mine: number, of: number): Scores {
  const scores: Scores = {};
  for (const regime of regimes) {
    const score = new Map<string, Outcome>();
    for (let seed = first + mine; seed < first + swims; seed += of) scoreSwim(regime, seed, score);
    scores[regime.name] = Object.fromEntries(score);
  }
  return scores;
}

function add(scores: Scores, more: Scores): void {
  for (const [name, readings] of Object.entries(more)) {
    const into = scores[name] ?? {};
    scores[name] = into;
    for (const [id, tally] of Object.entries(readings)) into[id] = summed([into[id] ?? noOutcome(), tally]);
  }
}

const inProcess = (which: string): Promise<Scores> =>
  new Promise((resolve, reject) => {
    const child = fork(fileURLToPath(import.meta.url), [String(swims), String(first), `--share=${which}`]);
    child.on('message', (message) => resolve(message as Scores));
    child.on('error', reject);
    child.on('exit', (code) => code !== 0 && reject(new Error(`share ${which} ended with code ${code}`)));
  });

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
      lines.push(row(name, summed(Object.values(scores[name] ?? {})), drawn[name] ?? 0));
  }
  lines.push('', '## Reading by reading, all ways in which marks can tell', '', ...head('reading'));
  const told = regimes.filter((each) => each.telling === 'told').map(({ name }) => scores[name] ?? {});
  for (const id of new Set(told.flatMap((each) => Object.keys(each))))
    lines.push(row(id, summed(told.flatMap((each) => each[id] ?? [])), ''));
  return lines;
}

if (share) {
  const [mine = 0, of = 1] = share.split('/').map(Number);
  process.send?.(counted(mine, of), () => process.disconnect());
} else {
  const known: Counted = existsSync(chunks)
    ? (JSON.parse(readFileSync(chunks, 'utf8')) as Counted)
    : { swims: {}, seeds: [], scores: {} };
  const jobs = Math.max(1, Math.min(availableParallelism(), swims));
  if (swims > 0) {
    const shares = await Promise.all(Array.from({ length: jobs }, (_, i) => inProcess(`${i}/${jobs}`)));
    for (const scores of shares) add(known.scores, scores);
    for (const { name } of regimes) known.swims[name] = (known.swims[name] ?? 0) + swims;
  }
  const all: Counted = { ...known, seeds: swims > 0 ? [...known.seeds, [first, swims]] : known.seeds };
  mkdirSync(path.dirname(chunks), { recursive: true });
  writeFileSync(chunks, JSON.stringify(all));
  const lines = table(all);
  if (write) writeSection('incomplete-marking', 'readings/incomplete.ts', lines, 'incomplete-marking');
  console.log(lines.join('\n'));
}
