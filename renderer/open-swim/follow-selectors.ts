import { type DoubtAnswer, doubtScale, withDoubtScaled } from '#core/follow/doubt-scale';
import { type FramePiece, followPieces } from '#core/follow/follow-pieces';
import { type FollowedByFrame, followedBodies } from '#core/follow/followed-posture';
import { piecesToFollow } from '#core/follow/keep-followed';
import { linesToLay } from '#core/follow/lines-to-lay';
import { markedPoints } from '#core/follow/marked-points';
import { type FollowQuestion, nextQuestions, unsurePoints } from '#core/follow/next-questions';
import { questionContext } from '#core/follow/question-context';
import type { LandmarkName } from '#core/marks/landmark';
import type { Swim } from '#core/swim-file/swim-schema';
import { clockOf } from './open-swim';
import { keptWith } from '#core/units/kept-with';
import { postureOn } from './selectors';

/** Followed points by frame and landmark. */
export const followedOf = (swim: Swim): FollowedByFrame => followedBodies(swim.followed);

/** Whether the coach placed it there. A point said to be hidden tells following nothing new. */
const isMarkedIn =
  (swim: Swim) =>
  (landmark: LandmarkName, frame: number): boolean => {
    const posture = postureOn(swim, frame);
    return posture?.points[landmark] !== undefined;
  };

/** Every piece between body lines that can be followed. */
export const allPieces = keptWith((postures: Swim['postures']): readonly FramePiece[] =>
  followPieces(markedPoints(postures)),
);

/** Pieces not followed yet, or with marks made since. */
export const openPieces = keptWith((swim: Swim): readonly FramePiece[] =>
  piecesToFollow(allPieces(swim.postures), swim.followed, isMarkedIn(swim)),
);

/** What answers told of each open swim's doubt, by its id: as long as the window is open. */
const answersOf = new Map<string, readonly DoubtAnswer[]>();

/** An answer at a point that had been followed: the questions after it know how far off such points are on this film. */
export function learnFromAnswer(swim: Pick<Swim, 'id'>, answer: DoubtAnswer): void {
  answersOf.set(swim.id, [...(answersOf.get(swim.id) ?? []), answer]);
}

interface Asked {
  readonly answers: number;
  readonly questions: readonly FollowQuestion[];
  readonly unsure: number;
}
const kept = new WeakMap<Swim, Asked>();

/** Everything asked of a swim as its answers so far have it; the same object until marks or answers change. */
function askedOf(swim: Swim): Asked {
  const answers = answersOf.get(swim.id) ?? [];
  const known = kept.get(swim);
  if (known?.answers === answers.length) return known;
  const context = questionContext(swim, clockOf(swim), isMarkedIn(swim));
  const followed = withDoubtScaled(swim.followed, doubtScale(answers));
  const asked = {
    answers: answers.length,
    questions: nextQuestions(followed, context),
    unsure: unsurePoints(followed, context.isSettled),
  };
  kept.set(swim, asked);
  return asked;
}
const unsureAmong = keptWith((questions: readonly FollowQuestion[]) =>
  questions.filter(({ sharpens }) => !sharpens),
);

/** How many points are not sure and still to be asked for. */
export const unsureOf = (swim: Swim): number => askedOf(swim).unsure;

/** What the coach is asked, most useful first. */
export const questionsOf = (swim: Swim): readonly FollowQuestion[] => unsureAmong(askedOf(swim).questions);

/** The mark that would sharpen most once nothing is unsure; null before that, and when nothing is followed. */
export function sharpeningOf(swim: Swim): FollowQuestion | null {
  const [first] = askedOf(swim).questions;
  return first?.sharpens ? first : null;
}

/** Frames on which a body line would help following most. */
export const linesWanted = keptWith((swim: Swim): readonly number[] => linesToLay(swim, clockOf(swim)));
