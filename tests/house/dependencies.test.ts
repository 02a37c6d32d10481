import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { root } from './import-walk';

interface Manifest {
  readonly dependencies: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
  readonly optionalDependencies: Readonly<Record<string, string>>;
}

const manifest = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as Manifest;

/** Used without being named whole in an import, and how. */
const usedOtherwise = new Map([
  ['@biomejs/biome', 'run as biome'],
  ['typescript', 'run as tsc'],
  ['@vitest/browser-playwright', 'asked for by Vitest, which runs tests in the browser through it'],
  ['konva', 'what react-konva draws with'],
  ['@ffmpeg-installer/ffmpeg', 'put together by name where the media tools are looked for'],
  ['@ffprobe-installer/ffprobe', 'put together by name where the media tools are looked for'],
]);
/** Letters of a script are found by the script's name. */
const byScript = /^@fontsource-variable\/noto-sans-/;

it('depends on nothing that no file uses', () => {
  const files = execFileSync('git', ['ls-files', '*.ts', '*.tsx', '*.mjs', '*.css', '*.html'], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 64 * 2 ** 20,
  })
    .split('\n')
    .filter((file) => file !== '' && file !== 'tests/house/dependencies.test.ts');
  const text = files.map((file) => readFileSync(path.join(root, file), 'utf8')).join('\n');
  const names = Object.keys({
    ...manifest.dependencies,
    ...manifest.devDependencies,
    ...manifest.optionalDependencies,
  });
  const unused = names.filter((name) => {
    if (name.startsWith('@types/') || byScript.test(name) || usedOtherwise.has(name)) return false;
    // in quotes, alone or with a path in the package behind it
    return !new RegExp(`['"\`](?:node_modules/)?${name}['"\`/]`).test(text);
  });
  expect(unused).toEqual([]);
  expect([...usedOtherwise.keys()].filter((name) => !names.includes(name))).toEqual([]);
});
