import type { PairPart } from '../compare/pair-part';
import { pairRun } from '../compare/pair-run';
import type { VideoPlan } from './video-plan';

/** The pictures of a video: of each, the frame of every swim. */
export interface VideoRun {
  readonly pictures: number;
  framesOf(picture: number): readonly number[];
  /** Whether a swim ever shows frames, and which: both ends. */
  readonly spans: readonly { readonly first: number; readonly last: number }[];
}

/**
 * Which frame of each swim every picture of a video shows: picture n is the moment n / (rate · slow) true seconds after
 * the beginning, looked up exactly as the stages do. Frames never go backward.
 */
export function videoRun(parts: readonly PairPart[], plan: VideoPlan): VideoRun {
  const run = pairRun(
    parts.map(({ side }) => side),
    plan.mode,
    { frames: plan.sides.map(({ frame }) => frame), lead: Math.min(plan.lead, plan.sides.length - 1) },
  );
  const seconds = Math.min(run.seconds, plan.seconds ?? run.seconds);
  // a thousandth of a picture of slack, so that a last picture that begins at the very end is kept
  const pictures = Math.floor(seconds * plan.rate * plan.slow + 1e-3) + 1;
  const framesOf = (picture: number): readonly number[] =>
    run.framesAt(Math.min(seconds, picture / (plan.rate * plan.slow)));
  const begin = framesOf(0);
  const end = framesOf(pictures - 1);
  return {
    pictures,
    framesOf,
    spans: parts.map((_, index) => ({ first: begin[index] as number, last: end[index] as number })),
  };
}
