import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { csvParse } from 'd3-dsv';
import { build } from 'esbuild';
import { execaNode } from 'execa';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readingsCsv, readingsJson } from '#core/exporting/readings-csv';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import { catalogue } from '#core/measures/families';
import { readingsDocumentSchema } from '#core/measures/readings-document';
import { parseSwim, serialiseSwim } from '#core/swim-file/swim-file';
import { plainMark, swimFileVersion } from '#core/swim-file/swim-schema';
import { aSwim } from '#tests/shared-core/swim-file/a-swim';

const script = new URL('../../electron/commands/readings.mjs', import.meta.url);
/** The command in one file: starting it from its many sources again and again is most of what these tests would take. */
const bundled = fileURLToPath(new URL(`../../.build/readings-${process.pid}.mjs`, import.meta.url));
const readings = (...args: string[]) => execaNode(bundled, args, { reject: false });

let folder: string;
let swimFolder: string;
beforeAll(async () => {
  await build({
    entryPoints: [fileURLToPath(new URL('../../electron/commands/readings.ts', import.meta.url))],
    ...{ bundle: true, platform: 'node', format: 'esm', packages: 'external', logLevel: 'silent' },
    outfile: bundled,
  });
  folder = await mkdtemp(path.join(tmpdir(), 'submark-readings-'));
  swimFolder = path.join(folder, 'swims', 'swim-1');
  await mkdir(swimFolder, { recursive: true });
  const kicks = Array.from({ length: 9 }, (_, i) => ({
    id: `k${i}`,
    kind: i % 2 === 0 ? ('kick-top' as const) : ('kick-bottom' as const),
    frame: 10 + 12 * i,
    ...plainMark,
  }));
  await writeFile(path.join(swimFolder, 'swim.json'), serialiseSwim(aSwim({ events: kicks })));
});
afterAll(async () => {
  await rm(bundled, { force: true });
  await rm(folder, { recursive: true, force: true });
});

describe('the readings command', () => {
  it('gives every reading of the catalogue as JSON, for a folder and for its file alike', async () => {
    const run = await readings(swimFolder, '--json');
    expect([run.exitCode, run.stderr]).toEqual([0, '']);
    const answer = readingsDocumentSchema.parse(JSON.parse(run.stdout));
    expect(answer.readings.map((each) => each.id).sort()).toEqual(catalogue.map((each) => each.id).sort());
    // a top every 24 frames at 60 a second: 2.5 kicks a second
    const frequency = answer.readings.find((each) => each.id === 'kick-frequency');
    expect(frequency?.status).toBe('computed');
    expect(frequency?.status === 'computed' && frequency.value).toBeCloseTo(2.5, 6);
    const asItIsRun = await execaNode(script, [path.join(swimFolder, 'swim.json'), '--json']);
    expect(asItIsRun.stdout).toBe(run.stdout);
  });

  it('says beside the readings when no person kicks like that, and keeps it out of what is piped on', async () => {
    const slowed = path.join(folder, 'slowed');
    await mkdir(slowed);
    const swim = JSON.parse(await readFile(path.join(swimFolder, 'swim.json'), 'utf8'));
    swim.clip.slowdown = { factor: 8, source: 'coach' };
    await writeFile(path.join(slowed, 'swim.json'), JSON.stringify(swim));
    const run = await readings(slowed, '--csv');
    expect(run.stderr).toContain('Kick frequency reads 20 Hz; a person kicks 0.5 to 4 times a second.');
    expect(run.stdout).not.toContain('a person kicks');
    expect(run.stdout).toContain('implausible-for-a-human');
  });

  it('uses the coach’s own marking error where it was measured', async () => {
    const noteOf = async (): Promise<{ half: number; notes: string[] }> => {
      const run = await readings(swimFolder, '--json');
      const answer = readingsDocumentSchema.parse(JSON.parse(run.stdout));
      const found = answer.readings.find((each) => each.id === 'kick-tempo');
      if (found?.status !== 'computed') throw new Error('no kick tempo');
      return { half: Math.sqrt(found.ownVariance), notes: found.notes.map((note) => note.code) };
    };
    const assumed = await noteOf();
    expect(assumed.notes).toContain('marking-error-assumed');
    // differences of ± 40 ms: a typical error near 29 ms, well above the 10 ms assumed
    const remarkings = (['kick-top', 'kick-bottom'] as const).flatMap((item) =>
      Array.from({ length: 12 }, (_, i) => ({
        item,
        axis: 'time',
        difference: i % 2 === 0 ? 0.04 : -0.04,
        frameSeconds: 1 / 60,
        of: 'marked',
        on: '2024-05-14T09:00:00.000Z',
        swimId: 'swim-1',
      })),
    );
    const coach = path.join(folder, 'coach.json');
    await writeFile(coach, JSON.stringify({ format: 'submark-coach', version: 2, remarkings }));
    const measured = await noteOf();
    await rm(coach);
    expect(measured.notes.some((note) => note.startsWith('marking-error'))).toBe(false);
    expect(measured.half / assumed.half).toBeGreaterThan(2);
  });

  it('says that a damaged coach’s file is not used, and leaves it as it is', async () => {
    const coach = path.join(folder, 'coach.json');
    await writeFile(coach, '{"format":"submark-coach","version":2,"remarkings":[{');
    const run = await readings(swimFolder, '--json');
    expect(run.exitCode).toBe(0);
    expect(run.stderr).toContain('coach.json can’t be read, so your own marking error is not used');
    expect(await readFile(coach, 'utf8')).toContain('"remarkings":[{');
    await rm(coach);
    expect((await readings(swimFolder, '--json')).stderr).toBe('');
  });

  it('ends quietly when whoever reads its table stops reading', async () => {
    const run = readings(swimFolder, '--csv');
    run.stdout.destroy();
    const { exitCode, stderr } = await run;
    expect([exitCode, stderr]).toEqual([0, '']);
  });

  it('prints a table, and a CSV of one row a reading', async () => {
    const table = await readings(swimFolder);
    expect(table.stdout).toMatch(/2\.5 ± .*Hz.*95 %/);
    const csv = (await readings(swimFolder, '--csv')).stdout.split('\n');
    expect(csv).toHaveLength(catalogue.length + 1);
    expect(csv[0]).toMatch(/^reading,label,status,value,unit,low95,high95/);
    // as many cells in every row as in the heading, quoted ones counted whole
    const cells = (row = ''): number => row.replaceAll(/"([^"]|"")*"/g, '').split(',').length;
    for (const row of csv) expect(cells(row)).toBe(cells(csv[0]));
  });

  it('writes of every sample what the documented schema says, to another validator’s eye, and a tidy table', async () => {
    const schema = JSON.parse(
      await readFile(new URL('../../docs/readings.schema.json', import.meta.url), 'utf8'),
    );
    const validate = new Ajv2020({ allErrors: true }).compile(schema);
    const folders = ['sample-clips/library/swims', 'sample-clips/month/swims'];
    const samples = await Promise.all(
      folders.map(async (each) => (await readdir(each)).map((name) => path.join(each, name, 'swim.json'))),
    ).then((lists) => lists.flat());
    expect(samples.length).toBeGreaterThan(20);
    for (const file of samples) {
      const parsed = parseSwim(await readFile(file, 'utf8'));
      if (!parsed.ok) throw new Error(file);
      const all = computeReadings(readingContext(parsed.value, { swimmer: null, markingError: null }));
      validate(JSON.parse(readingsJson(parsed.value, all)));
      expect(validate.errors, file).toBeNull();
      const rows = csvParse(readingsCsv(all, catalogue));
      expect(rows.map(({ reading }) => reading)).toEqual(catalogue.map(({ id }) => id));
      for (const row of rows) {
        const { value, low95, high95, unit, missing } = row;
        if (row['status'] === 'missing') {
          expect([value, low95, high95, unit], row['reading']).toEqual(['', '', '', '']);
          expect(missing, row['reading']).not.toBe('');
        } else {
          expect(Number(low95) <= Number(value) && Number(value) <= Number(high95), row['reading']).toBe(
            true,
          );
          expect([unit === '', missing], row['reading']).toEqual([false, '']);
        }
      }
    }
    // and the validator does see a field that is not of the schema
    expect(validate({ format: 'submark-readings', version: 1 })).toBe(false);
  });

  it('ends with 1 and one clear sentence when the file is missing, damaged or newer', async () => {
    const file = async (name: string, text: string): Promise<string> => {
      await writeFile(path.join(folder, name), text);
      return path.join(folder, name);
    };
    const good = await readFile(path.join(swimFolder, 'swim.json'), 'utf8');
    const cases: [string, RegExp][] = [
      [path.join(folder, 'no-such'), /is not there/],
      [folder, /can’t be read/],
      [await file('half.json', good.slice(0, 200)), /damaged/],
      [
        await file('newer.json', good.replace(`"version": ${swimFileVersion}`, '"version": 9')),
        /newer Submark.*9/,
      ],
    ];
    await Promise.all(
      cases.map(async ([target, words]) => {
        const run = await readings(target);
        expect([run.exitCode, run.stdout]).toEqual([1, '']);
        expect(run.stderr).toMatch(words);
        expect(run.stderr.split('\n')).toHaveLength(1);
      }),
    );
  });

  it('ends with 2 and its usage when asked wrongly', async () => {
    const asked = [[], ['a', 'b'], [swimFolder, '--xml'], [swimFolder, '--json', '--csv']];
    for (const run of await Promise.all(asked.map((args) => readings(...args)))) {
      expect([run.exitCode, run.stdout]).toEqual([2, '']);
      expect(run.stderr).toContain('Usage:');
    }
  });
});
