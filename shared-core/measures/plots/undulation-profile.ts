import { standardDeviation } from '../../signal/standard-deviation';
import { type LandmarkName, landmarkNames } from '../../marks/landmark';
import type { Reading, ReadingUnit } from '../reading';

/** One point of the body's wave: how far it goes up and down, and how much that varies from cycle to cycle. */
export interface ProfilePoint {
  readonly landmark: LandmarkName;
  readonly mean: number;
  /** Between cycles; null with fewer than two. */
  readonly sd: number | null;
  readonly cycles: number;
  /** 95 % interval of the mean in this swim. */
  readonly low: number;
  readonly high: number;
  readonly unit: ReadingUnit;
  /** Start of its first cycle, to look at; null when it is not known. */
  readonly frame: number | null;
}

/** Peak-to-peak height per cycle from fingertip to toe, of the landmarks that have it. */
export function undulationProfile(readings: readonly Reading[]): readonly ProfilePoint[] {
  return landmarkNames.flatMap((landmark): ProfilePoint[] => {
    const reading = readings.find(({ id }) => id === `undulation-${landmark}`);
    if (reading?.status !== 'computed') return [];
    const values = reading.perCycle.map(({ value }) => value);
    return [
      {
        landmark,
        mean: reading.value,
        sd: standardDeviation(values),
        cycles: reading.cycles,
        low: reading.interval.low,
        high: reading.interval.high,
        unit: reading.unit,
        frame: reading.perCycle[0]?.fromFrame ?? reading.from.postureFrames[0] ?? null,
      },
    ];
  });
}
