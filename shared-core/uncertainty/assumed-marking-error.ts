import { type EventKind, eventKinds } from '../marks/event-kind';
import { type LandmarkName, landmarkNames } from '../marks/landmark';
import { type MarkingError, nothingMeasured } from './marking-error';

/**
 * What is assumed until the coach's own error is measured: an event is marked within 10 ms (standard deviation) beside
 * frame rounding, a landmark within 0.3 % of the picture's height a direction, a scene point likewise, and a point that
 * the machine followed within twice that. Our defaults, no source; shown as "assumed" wherever they are used.
 */
export function assumedMarkingError(pictureHeight: number): MarkingError {
  const pixels = 0.003 * pictureHeight;
  return {
    basis: 'assumed',
    measured: nothingMeasured,
    eventSd: Object.fromEntries(eventKinds.map((kind) => [kind, 0.01])) as Record<EventKind, number>,
    landmarkSd: everyLandmark(pixels),
    followedSd: everyLandmark(2 * pixels),
    scenePointSd: pixels,
  };
}

const everyLandmark = (sd: number): Record<LandmarkName, number> =>
  Object.fromEntries(landmarkNames.map((name) => [name, sd])) as Record<LandmarkName, number>;
