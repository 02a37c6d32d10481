import { computeReadings, type ReadingKnowledge, readingContext } from '#core/measures/compute-readings';
import type { Reading } from '#core/measures/reading';
import type { Swim } from '#core/swim-file/swim-schema';
import type { FromReadingsWorker, ToReadingsWorker } from './readings-message';
import { changedSwim, listChange } from './swim-difference';

/** The swim and what goes with it, as far as told: readings are kept by the identity of what they are made of. */
let swim: Swim | null = null;
let known: ReadingKnowledge = { swimmer: null, markingError: null };
let sent: readonly Reading[] = [];

self.addEventListener('message', ({ data }: MessageEvent<ToReadingsWorker>) => {
  const start = performance.now();
  swim = changedSwim(swim, data.swim);
  known = data.known ?? known;
  const readings = computeReadings(readingContext(swim, known));
  const answer: FromReadingsWorker = {
    readings: listChange(sent, readings),
    tookMs: performance.now() - start,
  };
  sent = readings;
  self.postMessage(answer);
});
