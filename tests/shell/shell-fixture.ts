import type { ChildProcess } from 'node:child_process';
import { rm } from 'node:fs/promises';
import path from 'node:path';
import { _electron, test as base, type ElectronApplication, type Page } from '@playwright/test';
import { makeLibrary } from '../e2e/started-app';
import { type ElectronProgram, electronProgram } from './electron-program';

export interface OpenShell {
  readonly electron: ElectronApplication;
  readonly page: Page;
  readonly pid: number;
  /** Quits as the menu does, and waits until the program is gone. */
  quit(): Promise<void>;
}

interface Given {
  /** A fresh library with the sample swims; the profile lies beside it. */
  readonly library: string;
  /** Starts Submark on the library; more words for its command line may follow. */
  readonly open: (args?: readonly string[]) => Promise<OpenShell>;
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
      const electron = await _electron.launch({
        executablePath: program.path,
        args: [...program.args, `--user-data-dir=${profileOf(library)}`, ...args],
        env: { ...process.env, SUBMARK_LIBRARY: library, SUBMARK_SAMPLES: 'few' } as Record<string, string>,
      });
      // asked of it now: a program that has ended answers nothing
      const child = electron.process();
      started.push(child);
      const page = await electron.firstWindow();
      return {
        electron,
        page,
        pid: child.pid ?? 0,
        quit: async () => {
          const gone = new Promise((resolve) => child.once('exit', resolve));
          await electron.evaluate(({ app }) => app.quit()).catch(() => undefined);
          await gone;
        },
      };
    });
    for (const child of started)
      if (child.exitCode === null && child.signalCode === null) child.kill('SIGKILL');
  },
});
export { expect } from '@playwright/test';

export const profileOf = (library: string): string => path.join(path.dirname(library), 'profile');
