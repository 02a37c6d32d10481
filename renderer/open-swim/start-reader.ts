import { readInWorker, type StartReader } from './readings-reader';

/** The window's reader: a worker of its own for each opened swim. */
export const startReader: StartReader = readInWorker(
  () => new Worker(new URL('./readings-worker.ts', import.meta.url), { type: 'module' }),
  () => performance.now(),
);
