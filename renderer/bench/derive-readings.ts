import { computeReadings, readingContext } from '#core/measures/compute-readings';
import type { Derive } from '../readings/readings-store';
import { rhythmOf } from '../score/rhythm-of';

/** Readings and rhythm of a swim from one context, so that panel and score never disagree. */
export const deriveReadings: Derive = (swim, swimmer, markingError) => {
  const context = readingContext(swim, { swimmer, markingError });
  return { readings: computeReadings(context), rhythm: rhythmOf(context.events) };
};
