import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type ElectronPackage, makeElectronPackage } from './electron-package';

interface Reason {
  readonly code: string;
  readonly [fact: string]: unknown;
}
interface Kept {
  readonly version: string;
  readonly reason: Reason;
}
interface Options {
  electronPackage: string;
  folder: string;
  memory: { read(): Kept | undefined; write(value: Kept | undefined): void };
  say(words: string): void;
  getAgain?: boolean;
  platform?: string;
  uid?: number;
  env?: NodeJS.ProcessEnv;
  nodeVersion?: string;
  fetch?(options: { electronPackage: string }): Promise<Reason | null>;
}
const { electronWindow } = (await import(
  new URL('../../../electron/commands/starting/electron-window.mjs', import.meta.url).href
)) as { electronWindow(options: Options): Promise<{ ended?: number; instead?: string }> };

/** A program that stands for Electron: it is started by Node and told the app's folder as Electron is. */
const program = (script: string) =>
  `#!/usr/bin/env node\nconst ready = (then) => process.send('ready', then);\n${script}\n`;

describe.skipIf(process.platform !== 'linux')('the start command’s window', () => {
  let electron: ElectronPackage;
  let kept: Kept | undefined;
  let said: string[];
  let fetches: number;
  beforeEach(async () => {
    electron = await makeElectronPackage();
    kept = undefined;
    said = [];
    fetches = 0;
  });
  afterEach(() => electron.remove());

  const start = (more: Partial<Options> = {}) =>
    electronWindow({
      electronPackage: electron.folder,
      folder: '/a folder/of the app',
      memory: {
        read: () => kept,
        write: (value) => {
          kept = value;
        },
      },
      say: (words) => said.push(words),
      platform: 'linux',
      uid: 1000,
      env: { PATH: process.env['PATH'], DISPLAY: ':1' },
      nodeVersion: '24.9.0',
      fetch: () => {
        fetches++;
        return Promise.resolve({ code: 'silent', seconds: 15 });
      },
      ...more,
    });
  const again = ' To try again: npm start -- --get-electron';

  it('fetches Electron’s program when it is missing and opens the app’s folder in it', async () => {
    const done = await start({
      fetch: async () => {
        fetches++;
        await electron.install(
          program(
            'ready(() => process.exit(process.argv[2] === "/a folder/of the app" && process.env.SUBMARK_STARTER === "waits" ? 0 : 9))',
          ),
        );
        return null;
      },
    });
    expect(done).toEqual({ ended: 0 });
    expect(said).toEqual(['fetching Electron’s program, once …', 'opening Submark in Electron']);
    // offline later: at once
    expect(await start()).toEqual({ ended: 0 });
    expect(fetches).toBe(1);
  });

  it('remembers that it could not be fetched, and tries again only when asked to', async () => {
    const sentence = `Nothing of Electron’s program arrived for 15 seconds, so Submark opens in a browser instead.${again}`;
    expect(await start()).toEqual({ instead: sentence });
    expect(await start()).toEqual({ instead: `At an earlier start: ${sentence}` });
    expect(fetches).toBe(1);
    expect(await start({ getAgain: true })).toEqual({ instead: sentence });
    expect(fetches).toBe(2);
    await start({
      getAgain: true,
      fetch: async () => {
        await electron.install(program('process.exit(0)'));
        return null;
      },
    });
    expect(kept).toBeUndefined();
  });

  it('tries again by itself for another version of Electron', async () => {
    await start();
    kept = { version: '1.2.3', reason: { code: 'silent', seconds: 15 } };
    await start();
    expect(fetches).toBe(2);
  });

  it('says so when the installer ends well and the program is still not there', async () => {
    expect(await start({ fetch: () => Promise.resolve(null) })).toEqual({
      instead: `Electron’s installer failed, so Submark opens in a browser instead.${again}`,
    });
  });

  it.each([
    ['22.11.9', true],
    ['20.19.0', true],
    ['22.12.0', false],
    ['24.0.0', false],
  ])('fetches with no Node older than Electron’s installer wants (%s)', async (nodeVersion, tooOld) => {
    const { instead } = await start({ nodeVersion });
    expect(fetches).toBe(tooOld ? 0 : 1);
    if (tooOld)
      expect(instead).toBe(
        `Fetching Electron’s program needs Node 22.12.0 or newer, and this is Node ${nodeVersion}, so Submark opens in a browser instead.`,
      );
    // a newer Node has it fetched without being asked
    if (tooOld) expect(kept).toBeUndefined();
  });

  it('needs no newer Node for a program that is there', async () => {
    await electron.install(program('process.exit(0)'));
    expect(await start({ nodeVersion: '20.19.0' })).toEqual({ ended: 0 });
  });

  it('neither fetches nor opens for root, or where there is no screen', async () => {
    await electron.install(program('process.exit(0)'));
    expect((await start({ uid: 0 })).instead).toMatch(/^Electron opens no window for root/);
    expect((await start({ env: {} })).instead).toBe(
      'There is no screen to open a window on, so open the address below in a browser.',
    );
    // only Linux has a root without a sandbox and screens by variable
    expect(await start({ uid: 0, platform: 'linux', env: { WAYLAND_DISPLAY: 'w' } })).not.toHaveProperty(
      'ended',
    );
    expect(fetches).toBe(0);
  });

  it('takes Electron from ELECTRON_OVERRIDE_DIST_PATH, and fetches nothing where it isn’t there', async () => {
    const env = { PATH: process.env['PATH'], DISPLAY: ':1' };
    const named = path.join(electron.folder, 'dist');
    expect((await start({ env: { ...env, ELECTRON_OVERRIDE_DIST_PATH: named } })).instead).toBe(
      `ELECTRON_OVERRIDE_DIST_PATH names ${named}, but Electron isn’t in it, so Submark opens in a browser instead.`,
    );
    await electron.install(program('process.exit(0)'));
    expect(await start({ env: { ...env, ELECTRON_OVERRIDE_DIST_PATH: named } })).toEqual({ ended: 0 });
    expect(fetches).toBe(0);
  });

  it.each([
    ['a signal', 'process.kill(process.pid, "SIGTRAP")', 'Electron ended at once (SIGTRAP)'],
    ['a code', 'process.exit(133)', 'Electron ended at once (code 133)'],
    [
      'a missing library',
      'process.stderr.write("electron: error while loading shared libraries: libgtk-3.so.0: cannot open shared object file\\n", () => process.exit(127))',
      'Electron can’t start without the system library libgtk-3.so.0',
    ],
    [
      'no sandbox',
      'process.stderr.write("[1:FATAL:zygote_host_impl_linux.cc(128)] No usable sandbox!\\n", () => process.kill(process.pid, "SIGTRAP"))',
      'This system doesn’t let Electron use its sandbox',
    ],
    [
      'no screen after all',
      'process.stderr.write("[1:ERROR:ozone_platform_x11.cc(240)] Missing X server or $DISPLAY\\n", () => process.exit(1))',
      'Electron can’t reach the screen',
    ],
  ])('opens a browser and says why when Electron ends early by %s', async (_how, script, why) => {
    await electron.install(program(script));
    expect(await start()).toEqual({ instead: `${why}, so Submark opens in a browser instead.` });
    // it may be mended before the next start: nothing is remembered
    expect(kept).toBeUndefined();
  });

  it('opens a browser when the program can’t be started at all', async () => {
    await electron.install('#!/no/such/interpreter\n');
    expect((await start()).instead).toBe(
      'Electron’s program can’t be started (ENOENT), so Submark opens in a browser instead.',
    );
  });

  it('opens no second window when Electron ends in mid-work: it says so and passes the failure on', async () => {
    await electron.install(program('ready(() => process.kill(process.pid, "SIGKILL"))'));
    expect(await start()).toEqual({ ended: 1 });
    expect(said.at(-1)).toBe('Electron ended in mid-work (SIGKILL)');
  });

  it('takes a second start that hands over to the first window for a good end', async () => {
    await electron.install(program('process.exit(0)'));
    expect(await start()).toEqual({ ended: 0 });
  });
});
