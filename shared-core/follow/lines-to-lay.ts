import { bodyChain } from '../marks/landmark';
import type { Swim } from '../swim-file/swim-schema';
import { type ClipClock, realTimeOf } from '../timeline/clip-clock';

/** A body line this near to a marked moment, real seconds, stands for it. Our choice. */
const sameSeconds = 0.04;

/**
 * Frames on which a body line helps following most and is still missing, ascending: of the marked kick tops every second
 * one, in butterfly the one at which the hands pass the shoulders. Feet turn there, so that the size of the kick hangs on no guess; and
 * one line a stroke leaves most of a coach's clicks for what following then asks, which clears up more than a second
 * line would (tests/bench/follow/follow.ts).
 */
export function linesToLay(swim: Pick<Swim, 'events' | 'postures'>, clock: ClipClock): readonly number[] {
  const framesOf = (wanted: 'kick-top' | 'shoulder'): readonly number[] =>
    [...new Set(swim.events.flatMap(({ kind, frame }) => (kind === wanted ? [frame] : [])))].sort(
      (a, b) => a - b,
    );
  const tops = framesOf('kick-top');
  const hands = framesOf('shoulder');
  const secondsToHands = (frame: number): number =>
    Math.min(...hands.map((each) => Math.abs(realTimeOf(clock, each) - realTimeOf(clock, frame))));
  const mean = (frames: readonly number[]): number =>
    frames.reduce((sum, frame) => sum + secondsToHands(frame), 0) / Math.max(1, frames.length);
  const [odd, even] = [1, 0].map((parity) => tops.filter((_, i) => i % 2 === parity));
  const chosen = hands.length > 0 && mean(even ?? []) < mean(odd ?? []) ? even : odd;
  const laid = swim.postures
    .filter(({ points, hidden }) => bodyChain.every((name) => points[name] || hidden.includes(name)))
    .map(({ frame }): number => realTimeOf(clock, frame));
  return (chosen?.length ? chosen : tops).filter((frame) => {
    const time = realTimeOf(clock, frame);
    return !laid.some((each) => Math.abs(each - time) <= sameSeconds);
  });
}
