import { spawn, spawnSync } from 'node:child_process';
import { say } from '../../electron/commands/set-up.mjs';

const onPath = (name) => spawnSync('which', [name], { stdio: 'ignore' }).status === 0;

/** A screen that nobody looks at, with a window manager, as windows move and maximise only under one. */
export async function ownScreen() {
  if (process.platform !== 'linux') return { display: null, stop: () => undefined };
  const missing = ['Xvfb', 'openbox', 'xdotool', 'wmctrl', 'xprop'].filter((name) => !onPath(name));
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
