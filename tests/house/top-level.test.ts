import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const entries = [
  'DEVELOPERS.md',
  'LICENSE',
  'README.md',
  'docs',
  'electron',
  'package-lock.json',
  'package.json',
  'renderer',
  'sample-clips',
  'shared-core',
  'tests',
  'tsconfig.json',
];

it.skipIf(!existsSync(path.join(root, '.git')))(
  'the project’s folder holds what it should and no more',
  () => {
    const kept = execFileSync('git', ['ls-files'], { cwd: root, encoding: 'utf8', maxBuffer: 64 * 2 ** 20 });
    const names = new Set(kept.split('\n').map((file) => file.split('/')[0] ?? ''));
    const plain = [...names].filter((name) => name !== '' && !name.startsWith('.')).sort();
    expect(plain).toEqual(entries);
  },
);
