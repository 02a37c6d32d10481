import type { LandmarkName } from '../../../marks/landmark';
import type { FollowedSpread } from './followed-spread';
import type { LandmarkColumns } from './landmark-column';
import type { FollowedSamples, LandmarkTrace } from './landmark-trace';
import type { TimedPosture } from './timed-posture';

/** What traces are made of. */
export interface Traced {
  readonly postures: readonly TimedPosture[];
  readonly columns: LandmarkColumns;
  /** Frames of the postures, in their order. */
  readonly frames: readonly number[];
  readonly anyFollowed: boolean;
  readonly spread: FollowedSpread;
}

/**
 * Makes traces. Those of landmarks seen on the same postures share one row of frames and times, and of weights; those
 * seen on every posture are their columns themselves.
 */
export function landmarkTracer(
  of: Traced,
): (landmark: LandmarkName, sd: number, followedSd: number) => LandmarkTrace {
  const everyTime = of.postures.map((posture) => posture.time);
  const distinct = of.postures.every(
    ({ adrift, time }, i) => !adrift && time > (everyTime[i - 1] ?? -Infinity),
  );
  const shared = new Map<string, FollowedSamples>();
  return (landmark, sd, followedSd) => {
    const { x, y, whole } = of.columns[landmark];
    const rows = whole && distinct ? { frames: of.frames, times: everyTime, x, y } : knownOnly(of, landmark);
    const is = of.anyFollowed ? followedAt(of.postures, rows.frames, landmark) : [];
    return {
      ...rows,
      sd,
      followed: is.includes(true) ? followedSamples(is, sd, followedSd, of.spread, shared) : null,
    };
  };
}

type Rows = Pick<LandmarkTrace, 'frames' | 'times' | 'x' | 'y'>;

/** Samples of the postures on which a landmark is known, and along with the other frames' points. */
function knownOnly({ postures, columns }: Traced, landmark: LandmarkName): Rows {
  const column = columns[landmark];
  const frames: number[] = [];
  const times: number[] = [];
  const x: number[] = [];
  const y: number[] = [];
  let last = -Infinity;
  for (const { place, frame, time, adrift } of postures) {
    const here = column.x[place] as number;
    // two frames at one instant can't be told apart in time: the first is kept
    if (Number.isNaN(here) || adrift || time <= last) continue;
    last = time;
    frames.push(frame);
    times.push(time);
    x.push(here);
    y.push(column.y[place] as number);
  }
  return { frames, times, x, y };
}

/** Sample by sample of the rising row of frames, whether the machine followed the landmark there. */
function followedAt(
  postures: readonly TimedPosture[],
  frames: readonly number[],
  landmark: LandmarkName,
): readonly boolean[] {
  let i = 0;
  return frames.map((frame) => {
    while ((postures[i]?.frame ?? Infinity) < frame) i += 1;
    return postures[i]?.followed.includes(landmark) ?? false;
  });
}

function followedSamples(
  is: readonly boolean[],
  sd: number,
  followedSd: number,
  spread: FollowedSpread,
  shared: Map<string, FollowedSamples>,
): FollowedSamples {
  const share = followedSd > 0 ? (sd / followedSd) ** 2 : 1;
  const key = `${sd} ${followedSd} ${is.map((each) => (each ? 1 : 0)).join('')}`;
  const known = shared.get(key);
  if (known) return known;
  const weights = (grown: number): readonly number[] => is.map((each) => (each ? share / grown : 1));
  const made = { is, sd: followedSd, waveWeights: weights(spread.wave), slowWeights: weights(spread.slow) };
  shared.set(key, made);
  return made;
}
