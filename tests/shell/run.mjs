// `npm run shell`: the shell's stories in a real Electron. SUBMARK_ELECTRON_FOLDER names the folder with its program.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { root, run, say } from '../../electron/commands/set-up.mjs';
import { ownScreen } from './own-screen.mjs';

const folder = process.env.SUBMARK_ELECTRON_FOLDER;
if (!folder) {
  say('nothing was run: SUBMARK_ELECTRON_FOLDER names no folder with Electron’s program (its “dist” folder)');
  process.exit(0);
}
if (!existsSync(folder)) {
  say(`nothing was run: there is no folder ${folder}`);
  process.exit(2);
}

run(process.execPath, [path.join(root, 'electron', 'commands', 'build.mjs'), '--commonjs']);
const screen = await ownScreen();
const stories = spawn(
  process.execPath,
  [
    path.join(root, 'node_modules', '@playwright', 'test', 'cli.js'),
    'test',
    '--config',
    'tests/shell/playwright.config.ts',
    ...process.argv.slice(2),
  ],
  {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, ...(screen.display ? { DISPLAY: screen.display } : {}) },
  },
);
stories.on('exit', (code) => {
  screen.stop();
  process.exitCode = code ?? 1;
});
