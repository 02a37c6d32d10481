import { spawn } from 'node:child_process';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export interface StartedApp {
  /** The library's folder on disk. */
  readonly library: string;
  /** Opens the app in one window; each start gives one such address. */
  readonly address: string;
  /** Process id of the program, which holds the library. */
  readonly pid: number;
  /** Everything the program has said so far. */
  said(): string;
  /** Ends the program at once, as a crash or a power cut would. */
  kill(): void;
  /** Stops the program and waits until it is gone; the library stays. */
  stop(): Promise<void>;
}

const root = fileURLToPath(new URL('../..', import.meta.url));

/** A library folder of its own; without samples it is a library already, so that no samples are put into it. */
export async function makeLibrary(
  withSamples: boolean,
): Promise<{ library: string; remove(): Promise<void> }> {
  const parent = await mkdtemp(path.join(tmpdir(), 'submark-e2e-'));
  const library = path.join(parent, 'library');
  if (!withSamples) {
    await mkdir(library);
    await writeFile(
      path.join(library, 'library.json'),
      JSON.stringify({ format: 'submark-library', version: 1 }),
    );
  }
  return { library, remove: () => rm(parent, { recursive: true, force: true, maxRetries: 10 }) };
}

/** Starts Submark as a coach would (`npm start`), without opening a window. Builds first when a source is newer. */
export async function startApp(library: string, samples: 'few' | 'month' = 'few'): Promise<StartedApp> {
  const program = spawn(
    process.execPath,
    [path.join(root, 'electron', 'commands', 'start.mjs'), '--no-open'],
    {
      cwd: root,
      env: { ...process.env, SUBMARK_LIBRARY: library, SUBMARK_SAMPLES: samples },
      stdio: ['ignore', 'pipe', 'pipe'],
    },
  );
  let words = '';
  const gone = new Promise<void>((resolve) => program.once('exit', () => resolve()));
  const address = await new Promise<string>((resolve, reject) => {
    const late = setTimeout(() => reject(new Error(`Submark did not start in 60 s:\n${words}`)), 60_000);
    const hear = (chunk: Buffer): void => {
      words += chunk.toString();
      const found = /http:\/\/127\.0\.0\.1:\d+\/open\/\S+/.exec(words)?.[0];
      if (!found) return;
      clearTimeout(late);
      resolve(found);
    };
    program.stdout.on('data', hear);
    program.stderr.on('data', hear);
    program.once('exit', () => {
      clearTimeout(late);
      reject(new Error(`Submark ended before it could be opened:\n${words}`));
    });
  });
  return {
    library,
    address,
    pid: program.pid ?? 0,
    said: () => words,
    kill: () => {
      program.kill('SIGKILL');
    },
    stop: async () => {
      program.kill('SIGTERM');
      await gone;
    },
  };
}
