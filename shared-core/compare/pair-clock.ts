import { type ClipClock, frameAtRealTime, realTimeOf } from '../timeline/clip-clock';
import { type CycleWarp, cycleWarp } from './cycle-warp';
import { keptWith } from '../units/kept-with';

/** How two swims run together: in true time, in shares of the cycle, or each on its own. */
export const pairModes = ['time', 'cycle', 'free'] as const;
export type PairMode = (typeof pairModes)[number];

/** A mode in which one place names a moment of both swims. */
export type LockedMode = Exclude<PairMode, 'free'>;

/** One swim of a pair, as far as running it together with another needs it. */
export interface PairSide {
  readonly clock: ClipClock;
  /** Frames of the stretch under review, both included. */
  readonly first: number;
  readonly last: number;
  /** The moment the pair is locked on, real seconds of this clip. */
  readonly lockTime: number;
  /** Starts of its cycles, real seconds, strictly ascending. */
  readonly cycleStarts: readonly number[];
}

const warps = keptWith(cycleWarp);

const warpOf = (side: PairSide): CycleWarp | null => warps(side.cycleStarts);

/** Whether a swim has cycles to run in; without two cycle starts there is no percent of a cycle. */
export function hasCycles(side: PairSide): boolean {
  return warpOf(side) !== null;
}

/**
 * Place of a real time of one swim on the pair's common axis, from the lock on (0): real seconds in `time`, cycles in
 * `cycle` (1 is one whole cycle). A swim without cycles is read in seconds. Always worked out from the clip's own
 * ticks and never carried on from place to place, so nothing adds up however long the pair runs.
 */
export function placeOfTime(side: PairSide, mode: LockedMode, time: number): number {
  const warp = mode === 'cycle' ? warpOf(side) : null;
  return warp ? warp.toCycle(time) - warp.toCycle(side.lockTime) : time - side.lockTime;
}

/** The real time of one swim at a place; undoes `placeOfTime`. Not held to the stretch. */
export function timeAtPlace(side: PairSide, mode: LockedMode, place: number): number {
  const warp = mode === 'cycle' ? warpOf(side) : null;
  return warp ? warp.toTime(warp.toCycle(side.lockTime) + place) : side.lockTime + place;
}

export function placeOfFrame(side: PairSide, mode: LockedMode, frame: number): number {
  return placeOfTime(side, mode, realTimeOf(side.clock, frame));
}

/** The frame shown at a place by the one lookup rule; before and after the stretch its first and last frame. */
export function frameAtPlace(side: PairSide, mode: LockedMode, place: number): number {
  return heldFrame(side, frameAtRealTime(side.clock, timeAtPlace(side, mode, place)));
}

/** The nearest frame of the stretch. */
export function heldFrame(side: PairSide, frame: number): number {
  return Math.max(side.first, Math.min(side.last, frame));
}

/** The places at which at least one of the swims has a picture of its stretch to show. */
export function placesOf(sides: readonly PairSide[], mode: LockedMode): { from: number; to: number } {
  return {
    from: Math.min(...sides.map((side) => placeOfFrame(side, mode, side.first))),
    to: Math.max(...sides.map((side) => placeOfFrame(side, mode, side.last))),
  };
}

/** The places at which both swims are within their stretches; null when there are none. */
export function sharedPlaces(
  sides: readonly PairSide[],
  mode: LockedMode,
): { from: number; to: number } | null {
  const from = Math.max(...sides.map((side) => placeOfFrame(side, mode, side.first)));
  const to = Math.min(...sides.map((side) => placeOfFrame(side, mode, side.last)));
  return to > from ? { from, to } : null;
}
