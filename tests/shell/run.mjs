// `npm run shell`: the shell's stories in a real Electron. SUBMARK_ELECTRON_FOLDER names the folder with its program.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { root, run, say } from '../../electron/commands/set-up.mjs';

const folder = process.env.SUBMARK_ELECTRON_FOLDER;
if (!folder) {
  say('nothing was run: SUBMARK_ELECTRON_FOLDER names no folder with Electron’s program (its “dist” folder)');
  process.exit(0);
}
if (!existsSync(folder)) {
  say(`nothing was run: there is no folder ${folder}`);
  process.exit(2);
}

const onPath = (name) => spawnSync('which', [name], { stdio: 'ignore' }).status === 0;

/** A screen that nobody looks at, with a window manager, as windows move and maximise only under one. */
async function ownScreen() {
  if (process.platform !== 'linux') return { display: null, stop: () => undefined };
  const missing = ['Xvfb', 'openbox', 'xdotool', 'wmctrl'].filter((name) => !onPath(name));
  if (missing.length > 0) {
    say(`nothing was run: not on this machine: ${missing.join(', ')}`);
    process.exit(2);
  }
  const screen = spawn('Xvfb', ['-displayfd', '3', '-screen', '0', '1920x1080x24'], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
  });
  const display = await new Promise((resolve, reject) => {
    screen.stdio[3].once('data', (number) => resolve(`:${String(number).trim()}`));
    screen.once('exit', (code) => reject(new Error(`Xvfb ended with ${code}`)));
  });
  const manager = spawn('openbox', [], { env: { ...process.env, DISPLAY: display }, stdio: 'ignore' });
  return {
    display,
    stop: () => {
      manager.kill();
      screen.kill();
    },
  };
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
