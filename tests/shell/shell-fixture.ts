import { type ChildProcess, spawn } from 'node:child_process';
import { rm } from 'node:fs/promises';
import path from 'node:path';
import { test as base, type ElectronApplication, type Page } from '@playwright/test';
import { makeLibrary } from '../e2e/started-app';
import { type ElectronProgram, electronProgram } from './electron-program';
import { launchShell } from './launch-shell';

interface OpenShell {
  readonly electron: ElectronApplication;
  readonly page: Page;
  readonly pid: number;
  /** Quits as the menu does, and waits until the program is gone. */
  quit(): Promise<void>;
}

interface Given {
  /** A fresh library with the sample swims; the program’s own profile lies beside it. */
  readonly library: string;
  /** Starts Submark on the library; more words for its command line may follow. */
  readonly open: (args?: readonly string[]) => Promise<OpenShell>;
  /** Starts the program on the library and gives it as it is, for what opens no window. */
  readonly start: (args?: readonly string[], env?: Readonly<Record<string, string>>) => ChildProcess;
}

export const test = base.extend<Given, { readonly program: ElectronProgram }>({
  program: [
    // biome-ignore lint/correctness/noEmptyPattern: Playwright reads what a fixture needs from this pattern
    async ({}, use) => {
      const program = electronProgram();
      console.log(`Electron ${program.version}`);
      await use(program);
      if (program.made) await rm(program.made, { recursive: true, force: true });
    },
    { scope: 'worker' },
  ],
  // biome-ignore lint/correctness/noEmptyPattern: as above
  library: async ({}, use) => {
    const { library, remove } = await makeLibrary(true);
    await use(library);
    await remove();
  },
  open: async ({ program, library }, use) => {
    const started: ChildProcess[] = [];
    await use(async (args = []) => {
      const { electron, child } = await launchShell(program, library, args);
      started.push(child);
      const page = await electron.firstWindow();
      return {
        electron,
        page,
        pid: child.pid ?? 0,
        quit: async () => {
          const gone = endOf(child);
          await electron.evaluate(({ app }) => app.quit()).catch(() => undefined);
          base.expect(await gone, 'how it ended').toBe(0);
        },
      };
    });
    for (const child of started)
      if (child.exitCode === null && child.signalCode === null) child.kill('SIGKILL');
  },
  start: async ({ program, library }, use) => {
    const started: ChildProcess[] = [];
    await use((args = [], env = {}) => {
      const root = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
      const child = spawn(program.path, [...root, ...program.args, ...args], {
        env: { ...process.env, SUBMARK_LIBRARY: library, SUBMARK_SAMPLES: 'few', ...env },
        stdio: 'ignore',
      });
      started.push(child);
      return child;
    });
    for (const child of started)
      if (child.exitCode === null && child.signalCode === null) child.kill('SIGKILL');
  },
});
export { expect } from '@playwright/test';

/** Where the window’s place is kept. */
export const windowFile = (library: string): string =>
  path.join(path.dirname(library), 'desktop', 'window.json');

/** Waits until a program is gone, and gives how it ended. */
export const endOf = (child: ChildProcess): Promise<number | string | null> =>
  new Promise((resolve) => {
    if (child.exitCode !== null || child.signalCode !== null) resolve(child.exitCode ?? child.signalCode);
    else child.once('exit', (code, signal) => resolve(code ?? signal));
  });
