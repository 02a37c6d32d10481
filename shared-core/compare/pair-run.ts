import { realTimeOf } from '../timeline/clip-clock';
import {
  frameAtPlace,
  heldFrame,
  type LockedMode,
  type PairMode,
  type PairSide,
  placeOfFrame,
  placeOfTime,
  placesOf,
  timeAtPlace,
} from './pair-clock';

/** One swim or two running from where they stand. */
export interface PairRun {
  /** True seconds until the last picture of the last swim begins; 0 at the end. */
  readonly seconds: number;
  /** The frame of each swim after so many true seconds; a swim at the end of its stretch stays there. */
  framesAt(seconds: number): readonly number[];
}

/** Where the lead swim stands, of those given. */
interface Standing {
  readonly frames: readonly number[];
  /** The swim last moved: the others follow it. */
  readonly lead: number;
}

/**
 * Runs swims from where they stand. Locked, they share one place, and its clock is true time of the first swim; in
 * percent of the cycle the others are bent to its cycles. Free, each runs in its own true time. Each frame is worked out
 * from the start of the run, so nothing adds up.
 */
export function pairRun(sides: readonly PairSide[], mode: PairMode, standing: Standing): PairRun {
  if (mode === 'free') return freeRun(sides, standing.frames);
  const [first] = sides;
  if (!first) return { seconds: 0, framesAt: () => [] };
  const begin = timeAtPlace(first, mode, standingPlace(sides, mode, standing));
  return {
    seconds: Math.max(0, timeAtPlace(first, mode, placesOf(sides, mode).to) - begin),
    framesAt: (seconds) => framesAtPlace(sides, mode, placeOfTime(first, mode, begin + seconds)),
  };
}

function freeRun(sides: readonly PairSide[], frames: readonly number[]): PairRun {
  // locked each on the frame it stands on, all start at place 0
  const own = sides.map((side, index) => ({
    ...side,
    lockTime: realTimeOf(side.clock, frames[index] ?? side.first),
  }));
  return {
    seconds: Math.max(0, ...own.map((side) => placeOfFrame(side, 'time', side.last))),
    framesAt: (seconds) => framesAtPlace(own, 'time', seconds),
  };
}

/** The common place of swims as they stand: that of the one last moved. */
function standingPlace(sides: readonly PairSide[], mode: LockedMode, { frames, lead }: Standing): number {
  const side = sides[lead];
  return side ? placeOfFrame(side, mode, frames[lead] ?? side.first) : 0;
}

/** The frames all swims show at a place. */
export function framesAtPlace(
  sides: readonly PairSide[],
  mode: LockedMode,
  place: number,
): readonly number[] {
  return sides.map((side) => frameAtPlace(side, mode, place));
}

/**
 * The frames after one swim is set to a frame: locked, the others show theirs at its start by the one lookup rule;
 * free, they stay.
 */
export function followFrame(
  sides: readonly PairSide[],
  mode: PairMode,
  { frames, lead }: Standing,
): readonly number[] {
  const held = sides.map((side, index) => heldFrame(side, frames[index] ?? side.first));
  if (mode === 'free') return held;
  const place = standingPlace(sides, mode, { frames: held, lead });
  return sides.map((side, index) =>
    index === lead ? (held[index] ?? side.first) : frameAtPlace(side, mode, place),
  );
}
