import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { execa } from 'execa';
import { guards } from './guard-list';
import { type Wall, walls } from './wall-list';
import { writeSection } from '../write-section';

/**
 * Takes each wall, and each guard of the marks, out of a copy of the sources, one at a time, and runs the tests that ought
 * to miss it. A wall whose tests still pass is no wall that anybody guards.
 */
const project = fileURLToPath(new URL('../../../', import.meta.url));
const copy = mkdtempSync(path.join(tmpdir(), 'submark-walls-'));
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

async function missed(wall: Wall): Promise<boolean> {
  const file = path.join(copy, wall.file);
  const whole = readFileSync(file, 'utf8');
  if (!whole.includes(wall.is)) throw new Error(`${wall.file} no longer holds: ${wall.is}`);
  writeFileSync(file, whole.replace(wall.is, wall.without));
  try {
    return !(await testsPass([wall.test]));
  } finally {
    writeFileSync(file, whole);
  }
}

const all = [...walls, ...guards];
/** A part of the list, from and to, as arguments; only a whole run is written down. */
const chosen = all.slice(Number(process.argv[2] ?? 0), Number(process.argv[3] ?? all.length));
const unguarded: string[] = [];
try {
  const tests = [...new Set(chosen.map(({ test }) => test))];
  if (!(await testsPass(tests, true))) throw new Error('the tests fail with every wall standing');
  for (const wall of chosen) {
    const guarded = await missed(wall);
    console.log(`${guarded ? 'missed' : 'NOT MISSED'}: ${wall.name}`);
    if (!guarded) unguarded.push(wall.name);
  }
} finally {
  rmSync(copy, { recursive: true, force: true });
}
const names = (of: readonly Wall[]): string => of.map(({ name }) => name).join('; ');
if (chosen.length === all.length)
  writeSection(
    'walls',
    'safety/walls.ts',
    [
      `Taken out one at a time from a copy of the sources, each of these ${all.length} made its test fail${unguarded.length > 0 ? `, except: ${unguarded.join('; ')}` : ''}. Against those who would get in or out (${walls.length}): ${names(walls)}. Against a disk, a clock or another program that does not do its part (${guards.length}): ${names(guards)}.`,
      '',
      'What was taken out, and which test missed it, is listed in `tests/bench/safety/wall-list.ts` and `tests/bench/safety/guard-list.ts`.',
    ],
    'trust',
  );
process.exitCode = unguarded.length > 0 ? 1 : 0;
