import { existsSync } from 'node:fs';
import path from 'node:path';
import { spawnSync } from 'node:child_process';
import { root } from './set-up.mjs';

const tsx = path.join(root, 'node_modules', 'tsx', 'dist', 'cli.mjs');
if (!existsSync(tsx)) {
  console.error('Packages are not installed yet: run `npm start` or `npm ci` once.');
  process.exit(2);
}
const done = spawnSync(
  process.execPath,
  [tsx, path.join(root, 'electron/commands/readings.ts'), ...process.argv.slice(2)],
  { stdio: 'inherit' },
);
process.exit(done.status ?? 1);
