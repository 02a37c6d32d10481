import type { ChildProcess } from 'node:child_process';
import { _electron, type ElectronApplication } from '@playwright/test';
import type { ElectronProgram } from './electron-program';

export interface LaunchedShell {
  readonly electron: ElectronApplication;
  /** Asked for at once: a program that has ended answers nothing. */
  readonly child: ChildProcess;
}

/** Starts Submark in Electron on a library, with more words for its command line. */
export async function launchShell(
  program: ElectronProgram,
  library: string,
  args: readonly string[] = [],
): Promise<LaunchedShell> {
  const electron = await _electron.launch({
    executablePath: program.path,
    args: [...program.args, ...args],
    env: { ...process.env, SUBMARK_LIBRARY: library, SUBMARK_SAMPLES: 'few' } as Record<string, string>,
  });
  return { electron, child: electron.process() };
}
