import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { csvParse } from 'd3-dsv';
import { execa } from 'execa';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { z } from 'zod';

const command = fileURLToPath(new URL('../../electron/commands/export.mjs', import.meta.url));
const swims = fileURLToPath(new URL('../../sample-clips/library/swims/', import.meta.url));
const together = path.join(swims, 'sample-butterfly-together');
const late = path.join(swims, 'sample-butterfly-late-kick');

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'submark-export-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** Runs the command into a folder of its own and gives the one file it says it has made. */
async function exported(kind: string, ...args: string[]): Promise<string> {
  const out = path.join(folder, kind);
  const made = await execa(process.execPath, [command, kind, ...args, '--out', out]);
  expect((await readdir(out)).map((name) => path.join(out, name))).toEqual([made.stdout]);
  return made.stdout;
}

// each is a start of the command: they run beside each other, and may take long on a busy machine
it('the command line makes a bundle, JSON and a pair’s differences that other tools open', async () => {
  const [bundle, json, pair] = await Promise.all([
    exported('bundle', together),
    exported('json', together),
    exported('pair', together, late),
  ]);

  expect((await execa('unzip', ['-tq', bundle])).stdout).toMatch(/No errors detected/);
  const names = (await execa('unzip', ['-Z1', bundle])).stdout.split('\n');
  expect(names).toContain('swim.json');
  const inside = await execa('unzip', ['-p', bundle, 'swim.json'], { stripFinalNewline: false });
  const { card } = z.object({ card: z.object({ stroke: z.string() }) }).parse(JSON.parse(inside.stdout));
  expect(card.stroke).toBe('butterfly');

  const { readings } = z
    .object({ readings: z.array(z.object({ id: z.string(), value: z.number().optional() })) })
    .parse(JSON.parse(await readFile(json, 'utf8')));
  const frequency = readings.find(({ id }) => id === 'kick-frequency')?.value;
  expect(frequency).toBeGreaterThan(0);

  const rows = csvParse((await readFile(pair, 'utf8')).replace(/^\uFEFF/, ''));
  expect(rows.length).toBeGreaterThan(5);
  for (const { a, b, b_minus_a } of rows) {
    if (a === '' || b === '' || b_minus_a === '') continue;
    expect(Number(b_minus_a)).toBeCloseTo(Number(b) - Number(a), 2);
  }
  // the second swim's second kick comes late: that is what the two were drawn to differ in
  expect(rows.filter(({ verdict }) => verdict === 'clear').length).toBeGreaterThan(0);
  expect(Number(rows.find(({ reading }) => reading === 'kick-frequency')?.['a'])).toBeCloseTo(
    frequency ?? Number.NaN,
    4,
  );
}, 120_000);
