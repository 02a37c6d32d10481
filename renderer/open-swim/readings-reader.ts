import { computeReadings, readingContext } from '#core/measures/compute-readings';
import type { Reading } from '#core/measures/reading';
import type { Swimmer } from '#core/swim-file/squad-schema';
import type { Swim } from '#core/swim-file/swim-schema';
import type { MarkingError } from '#core/uncertainty/marking-error';
import type { FromReadingsWorker, ToReadingsWorker } from './readings-message';
import { type PlainWorker, type WorkerPatience, watchedWorker } from '../workers/watched-worker';
import { changedList, swimChange } from './swim-difference';

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

export type ReadingsWorker = PlainWorker<ToReadingsWorker, FromReadingsWorker>;

/** Twenty seconds: the longest swims take a second, loading a few. */
const patience: WorkerPatience = { checkMs: 250, silentChecks: 80 };

/**
 * Reads in a worker, so that a long swim never holds up the window. The worker is told what changed; one that fails, or
 * ended without a word, is put away, and this thread reads from then on.
 */
export function readInWorker(startWorker: () => ReadingsWorker, clock: () => number): StartReader {
  return (tell) => {
    let here: ReadingsReader | null = null;
    let told: ReadingsOf | null = null;
    let reading: ReadingsOf | null = null;
    let waiting: ReadingsOf | null = null;
    let readings: readonly Reading[] = [];
    const ask = (of: ReadingsOf): void => {
      const same = told?.swimmer === of.swimmer && told.markingError === of.markingError;
      const message: ToReadingsWorker = {
        swim: swimChange(told?.swim ?? null, of.swim),
        known: same ? null : { swimmer: of.swimmer, markingError: of.markingError },
      };
      told = of;
      reading = of;
      worker.watch();
      worker.send(message);
    };
    const heard = (data: FromReadingsWorker): void => {
      worker.rest();
      const of = reading;
      if (here || !of) return;
      readings = changedList(readings, data.readings);
      reading = null;
      const next = waiting;
      waiting = null;
      if (next) ask(next);
      tell(of, readings, data.tookMs);
    };
    const lost = (): void => {
      here = readHere(tell, clock);
      const last = waiting ?? reading;
      if (last) here.read(last);
    };
    const worker = watchedWorker(startWorker(), patience, { heard, lost });
    return {
      read(of) {
        if (here) here.read(of);
        else if (reading) waiting = of;
        else ask(of);
      },
      close() {
        here ??= { read: () => undefined, close: () => undefined };
        worker.end();
      },
    };
  };
}
