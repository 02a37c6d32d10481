import { fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { type BodyContext, isWhole } from '#core/measures/body/context/body-context';
import { families } from '#core/measures/families';
import type { Reading, ReadingDefinition } from '#core/measures/reading';
import type { Coverage, Tally } from '../../shared-core/measures/coverage-table';
import { writeSection } from '../write-section';

/** One table of a coverage simulation: how one swim of it is drawn, marked, read and counted. */
export interface CoveragePart {
  readonly title: string;
  readonly coverage: Coverage;
  readonly add: (coverage: Coverage, seed: number) => void;
}

const { values: options, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    /** Readings to count, parted by commas; a family none of which is asked for is not read. */
    only: { type: 'string', default: '' },
    /** A word of the titles of the parts to run. */
    part: { type: 'string', default: '' },
    /** Processes to share the swims among. */
    jobs: { type: 'string', default: String(availableParallelism()) },
    /** Which share of the swims this process draws. */
    share: { type: 'string' },
  },
});
const asked = new Set(options.only.split(',').filter((id) => id !== ''));
const swims = Number(positionals[0] ?? 2000);
const first = Number(positionals[1] ?? 1);
const write = positionals[2] === 'write';

const wanted = families.filter(
  ({ definitions }) => asked.size === 0 || definitions.some(({ id }) => asked.has(id)),
);

/** Readings of the families asked for; with `of`, of the family that these define alone. */
export function askedReadings(context: BodyContext, of?: readonly ReadingDefinition[]): readonly Reading[] {
  if (!isWhole(context)) throw new Error('a drawn swim is read whole');
  const read = of ? wanted.filter(({ definitions }) => definitions === of) : wanted;
  const readings = read.flatMap((family) => family.read(context));
  return asked.size === 0 ? readings : readings.filter(({ id }) => asked.has(id));
}

/**
 * Draw the swims asked for on the command line (`[swims] [first seed] [write] [--only id,id] [--part word] [--jobs n]`),
 * shared among processes, and print each reading outside the band, or write the whole table into docs/measures.md. What is
 * counted does not depend on how many processes share the work.
 */
export async function runCoverage(
  script: string,
  section: { readonly name: string; readonly writer: string },
  every: readonly CoveragePart[],
): Promise<void> {
  if (write && (asked.size > 0 || options.part !== '')) throw new Error('only a whole run is written down');
  const parts = every.filter(({ title }) => title.includes(options.part));
  if (options.share !== undefined) {
    const [mine, of] = options.share.split('/').map(Number) as [number, number];
    for (let seed = first + mine; seed < first + swims; seed += of)
      for (const { coverage, add } of parts) add(coverage, seed);
    process.send?.(parts.map(({ coverage }) => coverage.tallies()));
    process.disconnect();
    return;
  }
  const began = Date.now();
  const jobs = Math.max(1, Math.min(Number(options.jobs), swims));
  const shares = await Promise.all(
    Array.from({ length: jobs }, (_, i) => shareOf(fileURLToPath(script), `${i}/${jobs}`)),
  );
  for (const share of shares) for (const [i, tallies] of share.entries()) parts[i]?.coverage.merge(tallies);
  const lines = parts.flatMap(({ title, coverage }) => [
    '',
    `**${title}** (${swims} swims, seeds from ${first})`,
    '',
    ...coverage.markdown().split('\n'),
  ]);
  if (write) writeSection(section.name, section.writer, lines.slice(1), 'measures');
  for (const { title, coverage } of parts) {
    const rows = asked.size > 0 ? coverage.words() : coverage.failing();
    console.log(title, '\n  ', rows.join('\n   ') || 'all within');
  }
  console.log(`${((Date.now() - began) / 1000).toFixed(0)} s by ${jobs} processes`);
}

type Tallies = readonly (readonly [string, Tally])[];

function shareOf(script: string, share: string): Promise<readonly Tallies[]> {
  return new Promise((resolve, reject) => {
    const child = fork(script, [...process.argv.slice(2), '--share', share], { serialization: 'advanced' });
    let found: readonly Tallies[] | null = null;
    child.on('message', (message) => {
      found = message as readonly Tallies[];
    });
    child.on('error', reject);
    child.on('exit', (code) =>
      found ? resolve(found) : reject(new Error(`share ${share} of the swims ended with code ${code}`)),
    );
  });
}
