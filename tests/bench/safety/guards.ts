import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { execa } from 'execa';
import { savingGuards } from './saving-guards';
import { type Guard, securityGuards } from './security-guards';
import { writeSection } from '../write-section';

/**
 * Takes each guard, of what must be kept out and of the marks, out of a copy of the sources, one at a time, and runs the tests that ought
 * to miss it. A guard whose tests still pass is held by none.
 */
const project = fileURLToPath(new URL('../../../', import.meta.url));
const copy = mkdtempSync(path.join(tmpdir(), 'submark-guards-'));
for (const part of [
  ...[
    'electron',
    'shared-core',
    'renderer',
    'tests',
    'sample-clips',
    'docs',
    'package.json',
    'package-lock.json',
    'LICENSE',
    'tsconfig.json',
  ],
  ...['.tsconfig.base.json', '.build'],
])
  cpSync(path.join(project, part), path.join(copy, part), { recursive: true });
symlinkSync(path.join(project, 'node_modules'), path.join(copy, 'node_modules'));

async function testsPass(files: readonly string[], tell = false): Promise<boolean> {
  const run = await execa(
    process.execPath,
    [
      path.join(copy, 'node_modules/vitest/vitest.mjs'),
      'run',
      '--config',
      'tests/vitest.config.ts',
      // a test that finds no time on a busy machine misses nothing
      ...['--bail', '1', '--testTimeout', '60000', '--hookTimeout', '60000'],
      ...files,
    ],
    { cwd: copy, reject: false, stdin: 'ignore', env: { NO_COLOR: '1' } },
  );
  if (tell && run.exitCode !== 0) console.log(run.stdout.slice(-4000));
  return run.exitCode === 0;
}

async function missed(guard: Guard): Promise<boolean> {
  const file = path.join(copy, guard.file);
  const whole = readFileSync(file, 'utf8');
  if (!whole.includes(guard.is)) throw new Error(`${guard.file} no longer holds: ${guard.is}`);
  writeFileSync(file, whole.replace(guard.is, guard.without));
  try {
    return !(await testsPass([guard.test]));
  } finally {
    writeFileSync(file, whole);
  }
}

const all = [...securityGuards, ...savingGuards];
/** A part of the list, from and to, as arguments; only a whole run is written down. */
const chosen = all.slice(Number(process.argv[2] ?? 0), Number(process.argv[3] ?? all.length));
const unguarded: string[] = [];
try {
  const tests = [...new Set(chosen.map(({ test }) => test))];
  if (!(await testsPass(tests, true))) throw new Error('the tests fail with every guard standing');
  for (const guard of chosen) {
    const guarded = await missed(guard);
    console.log(`${guarded ? 'missed' : 'NOT MISSED'}: ${guard.name}`);
    if (!guarded) unguarded.push(guard.name);
  }
} finally {
  rmSync(copy, { recursive: true, force: true });
}
const names = (of: readonly Guard[]): string => of.map(({ name }) => name).join('; ');
if (chosen.length === all.length)
  writeSection(
    'guards',
    'safety/guards.ts',
    [
      `Taken out one at a time from a copy of the sources, each of these ${all.length} made its test fail${unguarded.length > 0 ? `, except: ${unguarded.join('; ')}` : ''}. Against those who would get in or out (${securityGuards.length}): ${names(securityGuards)}. Against a disk, a clock or another program that does not do its part (${savingGuards.length}): ${names(savingGuards)}.`,
      '',
      'What was taken out, and which test missed it, is listed in `tests/bench/safety/security-guards.ts` and `tests/bench/safety/saving-guards.ts`.',
    ],
    'trust',
  );
process.exitCode = unguarded.length > 0 ? 1 : 0;
