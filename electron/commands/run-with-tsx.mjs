import { existsSync } from 'node:fs';
import path from 'node:path';
import { spawnSync } from 'node:child_process';
import { root } from './set-up.mjs';

/** Runs one of the commands from its source, with the arguments given to this process; ends as it ends. */
export function runWithTsx(command) {
  const tsx = path.join(root, 'node_modules', 'tsx', 'dist', 'cli.mjs');
  if (!existsSync(tsx)) {
    console.error('Packages are not installed yet: run `npm start` or `npm ci` once.');
    process.exit(2);
  }
  const done = spawnSync(
    process.execPath,
    [tsx, path.join(root, 'electron/commands', command), ...process.argv.slice(2)],
    { stdio: 'inherit' },
  );
  process.exit(done.status ?? 1);
}
