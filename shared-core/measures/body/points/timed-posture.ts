import type { LandmarkName } from '../../../marks/landmark';
import type { Posture } from '../../../swim-file/swim-schema';

/** The landmarks of one frame, marked and followed, ready to be read. */
export interface TimedPosture {
  /** Its place among the swim's postures, from 0. */
  readonly place: number;
  readonly frame: number;
  readonly time: number;
  /** In the rectified picture, pixels. */
  readonly picture: Posture['points'];
  /** Those of them that the machine followed. */
  readonly followed: readonly LandmarkName[];
  /** The camera moved, and where it looked on this frame is not known: its points are of no use along with other frames'. */
  readonly adrift: boolean;
}

const nothingFollowed: readonly LandmarkName[] = [];

/** Postures with their times, in their order: ascending by frame, and so by time. */
export function timedPostures(
  flat: readonly Posture[],
  followed: ReadonlyMap<number, readonly LandmarkName[]>,
  adrift: ReadonlySet<number>,
  time: (frame: number) => number,
): readonly TimedPosture[] {
  return flat.map(({ frame, points: picture }, place) => ({
    place,
    frame,
    time: time(frame),
    picture,
    followed: followed.get(frame) ?? nothingFollowed,
    adrift: adrift.has(frame),
  }));
}
