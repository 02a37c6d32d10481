import { bodyChain, type LandmarkName } from '../marks/landmark';
import type { FollowedRun } from '../swim-file/swim-schema';
import { expectedSquare } from './expected-error';
import { sureEnough } from './follow-confidence';
import { limbs } from './limb';

/** A point worth asking the coach for. */
export interface FollowQuestion {
  readonly landmark: LandmarkName;
  readonly frame: number;
  /** Unsure frames around it that a mark there helps. */
  readonly frames: number;
  /**
   * How much doubt a mark there is expected to remove: the sum over frames of the expected squared error (in units of
   * what is useful, 2 % of the body length), times what readings need of the frame.
   */
  readonly gain: number;
  /** Nothing there is unsure: a mark would only sharpen what is sure. */
  readonly sharpens: boolean;
}

/** What of the film a question is judged by. */
export interface QuestionContext {
  /** Tells points that the coach has placed. */
  readonly isMarked: (landmark: LandmarkName, frame: number) => boolean;
  /** Tells points that need not be asked for: answered already, or out of the water. Left out: those that are marked. */
  readonly isSettled?: (landmark: LandmarkName, frame: number) => boolean;
  /** How much the readings need a landmark on a frame: 1 is usual. */
  readonly need?: (landmark: LandmarkName, frame: number) => number;
  /** Real seconds between two frames. */
  readonly interval: number;
}

/**
 * Errors of a followed point resemble each other: they fade to 1/e within so many real seconds. A mark so far away takes a
 * share e⁻² of the squared error with it. Our choice, as for readings of followed points.
 */
const alikeSeconds = 0.1;
/** Errors of landmarks at the two ends of a limb resemble each other by this (a correlation). Our choice. */
const alikeAcross = 0.5;
/** A mark beside which a limb's other end is marked teaches how that limb looks: worth so much more. Our default. */
const limbBonus = 1.4;
/** Stretches are asked once each: no second question of a landmark this near, in spans of likeness. */
const apartSpans = 1;

/**
 * What to ask, the most useful first: for every landmark and every unsure frame, how much doubt a mark there is
 * expected to remove around it in time and at the other end of its limbs. Of one stretch of unsure frames the best frame is
 * asked; what is still unsure once it is followed again is asked then. After all of those come, in the same order, marks that would
 * sharpen what is sure.
 */
export function nextQuestions(
  followed: readonly FollowedRun[],
  { isMarked, isSettled = isMarked, need = () => 1, interval }: QuestionContext,
): readonly FollowQuestion[] {
  const span = Math.max(1, alikeSeconds / interval);
  const unsure = doubtsOf(followed, isSettled, need, (confidence) => confidence < sureEnough);
  const sure = doubtsOf(followed, isSettled, need, (confidence) => confidence >= sureEnough);
  return [
    ...bestOf(unsure, isMarked, span).map((each) => ({ ...each, sharpens: false })),
    ...bestOf(sure, isMarked, span).map((each) => ({ ...each, sharpens: true })),
  ];
}

/** Of each stretch of doubt the best frame, the most useful first; those beside it would clear up the same. */
function bestOf(
  doubts: Doubts,
  isMarked: QuestionContext['isMarked'],
  span: number,
): readonly Omit<FollowQuestion, 'sharpens'>[] {
  const candidates = [...doubts].flatMap(([landmark, own]) =>
    [...own].map(([frame]) => {
      const beside = besides(landmark, frame, isMarked) ? limbBonus : 1;
      return { landmark, frame, ...gainAt(doubts, landmark, frame, span, beside) };
    }),
  );
  const best: typeof candidates = [];
  for (const each of candidates.sort((a, b) => b.gain - a.gain || a.frame - b.frame)) {
    const near = best.some(
      ({ landmark, frame }) =>
        landmark === each.landmark &&
        (Math.abs(frame - each.frame) <= apartSpans * span || joined(doubts, landmark, frame, each.frame)),
    );
    if (!near) best.push(each);
  }
  return best;
}

type Doubts = ReadonlyMap<LandmarkName, ReadonlyMap<number, number>>;

/** What a landmark's frames lack, of those asked for: expected squared error by need. */
function doubtsOf(
  followed: readonly FollowedRun[],
  isSettled: QuestionContext['isMarked'],
  need: (landmark: LandmarkName, frame: number) => number,
  isMeant: (confidence: number) => boolean,
): Doubts {
  const doubts = new Map<LandmarkName, Map<number, number>>();
  for (const { landmark, frame, points } of followed) {
    const own = doubts.get(landmark) ?? new Map<number, number>();
    doubts.set(landmark, own);
    points.forEach(([, , confidence], i) => {
      if (isMeant(confidence) && !isSettled(landmark, frame + i))
        own.set(frame + i, need(landmark, frame + i) * expectedSquare(confidence));
    });
  }
  return doubts;
}

/** Doubt that goes with a mark: nearby frames by how alike their errors are, neighbouring landmarks by less. */
function gainAt(
  doubts: Doubts,
  landmark: LandmarkName,
  frame: number,
  span: number,
  beside: number,
): Pick<FollowQuestion, 'frames' | 'gain'> {
  const reach = Math.ceil(3 * span);
  const at = bodyChain.indexOf(landmark);
  let gain = 0;
  let frames = 0;
  for (let f = frame - reach; f <= frame + reach; f++) {
    const alike = Math.exp((-2 * Math.abs(f - frame)) / span);
    const own = doubts.get(landmark)?.get(f);
    if (own !== undefined) frames += 1;
    gain += alike * (own ?? 0);
    for (const next of [bodyChain[at - 1], bodyChain[at + 1]])
      if (next && at >= 0) gain += alike * alikeAcross ** 2 * (doubts.get(next)?.get(f) ?? 0);
  }
  return { frames, gain: beside * gain };
}

/** Whether every frame from one to the other is unsure, so that both lie in one stretch. */
function joined(doubts: Doubts, landmark: LandmarkName, one: number, other: number): boolean {
  const own = doubts.get(landmark);
  for (let f = Math.min(one, other); f <= Math.max(one, other); f++) if (!own?.has(f)) return false;
  return true;
}

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

/** How many followed points are not sure and still to be asked for. */
export function unsurePoints(
  followed: readonly FollowedRun[],
  isSettled: (landmark: LandmarkName, frame: number) => boolean,
): number {
  return followed.reduce(
    (sum, { landmark, frame, points }) =>
      sum +
      points.filter(([, , confidence], i) => confidence < sureEnough && !isSettled(landmark, frame + i))
        .length,
    0,
  );
}
