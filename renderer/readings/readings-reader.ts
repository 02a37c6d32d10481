import { computeReadings, readingContext } from '#core/measures/compute-readings';
import type { Reading } from '#core/measures/reading';
import type { Swimmer } from '#core/swim-file/squad-schema';
import type { Swim } from '#core/swim-file/swim-schema';
import type { MarkingError } from '#core/uncertainty/marking-error';
import type { FromReadingsWorker, ToReadingsWorker } from './readings-message';
import { changedList, swimChange } from './swim-change';

/** What readings are read from. */
export interface ReadingsOf {
  readonly swim: Swim;
  readonly swimmer: Swimmer | null;
  readonly markingError: MarkingError | null;
}

export type TellReadings = (of: ReadingsOf, readings: readonly Reading[], tookMs: number) => void;

/** Reads swims somewhere. What is asked while it is at work replaces what waits: only the newest is read. */
export interface ReadingsReader {
  read(of: ReadingsOf): void;
  close(): void;
}

export type StartReader = (tell: TellReadings) => ReadingsReader;

/** Reads in the thread it is asked in, at once: for tests, and where no worker can be had. */
export function readHere(tell: TellReadings, clock: () => number): ReadingsReader {
  return {
    read(of) {
      const start = clock();
      const readings = computeReadings(readingContext(of.swim, of));
      tell(of, readings, clock() - start);
    },
    close: () => undefined,
  };
}

/** For screens that show no readings of their own. */
export const readNothing: StartReader = () => ({ read: () => undefined, close: () => undefined });

/** The part of a worker that is used. */
export type ReadingsWorker = Pick<Worker, 'postMessage' | 'terminate' | 'addEventListener'>;

/** A worker that owes readings for this long is taken for dead, ms: the longest swims take a second, loading a few. */
const silenceMs = 20_000;

/**
 * Reads in a worker, so that a long swim never holds up the window. The worker is told what changed; one that fails, or
 * ended without a word, is put away, and this thread reads from then on.
 */
export function readAway(startWorker: () => ReadingsWorker, clock: () => number): StartReader {
  return (tell) => {
    const worker = startWorker();
    let here: ReadingsReader | null = null;
    let told: ReadingsOf | null = null;
    let reading: ReadingsOf | null = null;
    let waiting: ReadingsOf | null = null;
    let readings: readonly Reading[] = [];
    let silent: ReturnType<typeof setTimeout> | undefined;
    const ask = (of: ReadingsOf): void => {
      const same = told?.swimmer === of.swimmer && told.markingError === of.markingError;
      const message: ToReadingsWorker = {
        swim: swimChange(told?.swim ?? null, of.swim),
        known: same ? null : { swimmer: of.swimmer, markingError: of.markingError },
      };
      told = of;
      reading = of;
      worker.postMessage(message);
      silent = setTimeout(fail, silenceMs);
    };
    worker.addEventListener('message', ({ data }: MessageEvent<FromReadingsWorker>) => {
      clearTimeout(silent);
      const of = reading;
      if (here || !of) return;
      readings = changedList(readings, data.readings);
      reading = null;
      const next = waiting;
      waiting = null;
      if (next) ask(next);
      tell(of, readings, data.tookMs);
    });
    const fail = (): void => {
      clearTimeout(silent);
      if (here) return;
      worker.terminate();
      here = readHere(tell, clock);
      const last = waiting ?? reading;
      if (last) here.read(last);
    };
    worker.addEventListener('error', fail);
    worker.addEventListener('messageerror', fail);
    return {
      read(of) {
        if (here) here.read(of);
        else if (reading) waiting = of;
        else ask(of);
      },
      close() {
        clearTimeout(silent);
        here ??= { read: () => undefined, close: () => undefined };
        worker.terminate();
      },
    };
  };
}
