import { eventKinds } from '#core/marks/event-kind';
import { landmarkNames } from '#core/marks/landmark';
import type { MarkingError } from '#core/uncertainty/marking-error';

export interface Noise {
  readonly normal: () => number;
  readonly landmarkSd: number;
  readonly eventSd: number;
  readonly scenePointSd: number;
  readonly offPlaneSd: number;
}
export const noNoise: Noise = {
  normal: () => 0,
  landmarkSd: 2,
  eventSd: 0.01,
  scenePointSd: 1.5,
  offPlaneSd: 0.01,
};

export function markingError(noise: Pick<Noise, 'landmarkSd' | 'eventSd' | 'scenePointSd'>): MarkingError {
  return {
    basis: 'measured',
    measured: { events: [...eventKinds], landmarks: [...landmarkNames], followed: [...landmarkNames] },
    eventSd: Object.fromEntries(eventKinds.map((k) => [k, noise.eventSd])) as MarkingError['eventSd'],
    landmarkSd: Object.fromEntries(
      landmarkNames.map((n) => [n, noise.landmarkSd]),
    ) as MarkingError['landmarkSd'],
    followedSd: Object.fromEntries(
      landmarkNames.map((n) => [n, 2 * noise.landmarkSd]),
    ) as MarkingError['followedSd'],
    scenePointSd: noise.scenePointSd,
  };
}
