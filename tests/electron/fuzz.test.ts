import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ArchivesUnderFire, archivesUnderFire } from '../fuzz/archive-targets';
import { fileTargets } from '../fuzz/file-targets';
import { type HostUnderFire, hostUnderFire } from '../fuzz/host-targets';
import { type FuzzTarget, runFuzz } from '../fuzz/run-fuzz';

/** A quick share, other seeds than the fifty thousand cases of tests/bench/safety/fuzz.ts. */
const cases = 120;
/** Each unpacks files and flushes them. */
const zipCases = 40;
const firstSeed = 9_000_000;

/** Seeds that once broke a promise; each is run for ever after. */
const corpus = JSON.parse(readFileSync(new URL('../fuzz/found.json', import.meta.url), 'utf8')) as readonly {
  readonly target: string;
  readonly seed: number;
  readonly what: string;
}[];

const ofZips: readonly string[] = ['bundles', 'back-ups'];

let host: HostUnderFire;
let zips: ArchivesUnderFire;
beforeAll(async () => {
  host = await hostUnderFire();
  zips = await archivesUnderFire();
});
afterAll(async () => {
  await host.close();
  await zips.close();
});
const target = (name: string): FuzzTarget => {
  const found = [...fileTargets, ...host.targets, ...zips.targets].find((each) => each.name === name);
  if (!found) throw new Error(`no target ${name}`);
  return found;
};

describe('hostile input', () => {
  it.each([...fileTargets.map(({ name }) => name), 'operations', 'endpoints', ...ofZips])(
    '%s: answered with a typed error or taken whole, never a crash, a hang or a number that is not finite',
    async (name) => {
      const report = await runFuzz(target(name), ofZips.includes(name) ? zipCases : cases, firstSeed, 'own');
      expect(report.found).toEqual([]);
    },
  );

  it.each(corpus)('once found: $target $seed ($what)', async ({ target: name, seed }) => {
    expect((await runFuzz(target(name), 1, seed, 'own')).found).toEqual([]);
  });
});
