import type { LandmarkName } from '../marks/landmark';
import type { FollowedRun } from '../swim-file/swim-schema';
import { sureEnough } from './follow-confidence';
import { limbs } from './limb';

/** A point worth asking the coach for. */
export interface FollowQuestion {
  readonly landmark: LandmarkName;
  readonly frame: number;
  /** Frames around it that are unsure with it. */
  readonly frames: number;
  /** How much a mark there would clear up: the sum of what those frames lack in confidence. */
  readonly gain: number;
}

/** Unsure stretches with no more sure frames than this between them are one. Our default. */
const joinGap = 2;

/**
 * What to ask, the most useful first. Of each stretch of unsure frames of a landmark one frame is asked: the least
 * sure, and of nearly alike ones the one nearest the stretch's middle, since following from a new mark helps both
 * ways. `isMarked` tells points that the coach has placed since; they are sure.
 */
export function nextQuestions(
  followed: readonly FollowedRun[],
  isMarked: (landmark: LandmarkName, frame: number) => boolean,
): readonly FollowQuestion[] {
  return followed
    .flatMap(({ landmark, frame, points }) => {
      const lacks = points.map(([, , confidence], i) =>
        isMarked(landmark, frame + i) || confidence >= sureEnough ? 0 : 1 - confidence,
      );
      return unsureStretches(lacks).map(({ from, to }): FollowQuestion => {
        const own = lacks.slice(from, to + 1);
        return {
          landmark,
          frame: frame + from + worst(own, (i) => besides(landmark, frame + from + i, isMarked)),
          frames: own.filter((lack) => lack > 0).length,
          gain: own.reduce((sum, lack) => sum + lack, 0),
        };
      });
    })
    .sort((a, b) => b.gain - a.gain || a.frame - b.frame);
}

function unsureStretches(
  lacks: readonly number[],
): readonly { readonly from: number; readonly to: number }[] {
  const found: { from: number; to: number }[] = [];
  lacks.forEach((lack, i) => {
    if (lack <= 0) return;
    const last = found.at(-1);
    if (last && i - last.to <= joinGap + 1) last.to = i;
    else found.push({ from: i, to: i });
  });
  return found;
}

/** A mark beside which a limb's other end is marked teaches how that limb looks: worth so much more. Our default. */
const limbBonus = 1.4;

/** Whether a limb that the landmark holds has its other end marked on the frame. */
function besides(
  landmark: LandmarkName,
  frame: number,
  isMarked: (landmark: LandmarkName, frame: number) => boolean,
): boolean {
  return limbs.some(
    ({ from, to }) =>
      (from === landmark && isMarked(to, frame)) || (to === landmark && isMarked(from, frame)),
  );
}

/** Index of the largest, pulled toward the middle: half the lack at the ends counts as much as the whole in the middle. */
function worst(lacks: readonly number[], beside: (index: number) => boolean): number {
  const middle = (lacks.length - 1) / 2;
  let best = 0;
  let most = -1;
  lacks.forEach((lack, i) => {
    const pull = 1 - (0.5 * Math.abs(i - middle)) / Math.max(1, middle);
    const value = lack * pull * (lack > 0 && beside(i) ? limbBonus : 1);
    if (value > most) {
      most = value;
      best = i;
    }
  });
  return best;
}
