import { type FramePiece, followPieces } from '#core/follow/follow-pieces';
import { type FollowedByFrame, followedByFrame } from '#core/follow/followed-posture';
import { piecesToFollow } from '#core/follow/keep-followed';
import { linesToLay } from '#core/follow/lines-to-lay';
import { markedPoints } from '#core/follow/marked-points';
import { type FollowQuestion, nextQuestions, unsurePoints } from '#core/follow/next-questions';
import { questionContext } from '#core/follow/question-context';
import type { LandmarkName } from '#core/marks/landmark';
import type { Swim } from '#core/swim-file/swim-schema';
import { clockOf } from '../bench/bench-session';
import { postureOn, remembered } from '../state/selectors';

const byFrame = remembered((followed: Swim['followed']) => followedByFrame(followed));
/** Followed points by frame and landmark. */
export const followedOf = (swim: Swim): FollowedByFrame => byFrame(swim.followed);

/** Whether the coach placed it there. A point said to be hidden tells following nothing new. */
const isMarkedIn =
  (swim: Swim) =>
  (landmark: LandmarkName, frame: number): boolean => {
    const posture = postureOn(swim, frame);
    return posture?.points[landmark] !== undefined;
  };

/** Every piece between body lines that can be followed. */
export const allPieces = remembered((postures: Swim['postures']): readonly FramePiece[] =>
  followPieces(markedPoints(postures)),
);

/** Pieces not followed yet, or with marks made since. */
export const openPieces = remembered((swim: Swim): readonly FramePiece[] =>
  piecesToFollow(allPieces(swim.postures), swim.followed, isMarkedIn(swim)),
);

const contextOf = remembered((swim: Swim) => questionContext(swim, clockOf(swim), isMarkedIn(swim)));
const allQuestions = remembered((swim: Swim): readonly FollowQuestion[] =>
  nextQuestions(swim.followed, contextOf(swim)),
);

/** How many points are not sure and still to be asked for. */
export const unsureOf = remembered((swim: Swim) => unsurePoints(swim.followed, contextOf(swim).isSettled));

/** What the coach is asked, most useful first. */
export const questionsOf = remembered((swim: Swim) => allQuestions(swim).filter(({ sharpens }) => !sharpens));

/** The mark that would sharpen most once nothing is unsure; null before that, and when nothing is followed. */
export const sharpeningOf = remembered((swim: Swim): FollowQuestion | null => {
  const [first] = allQuestions(swim);
  return first?.sharpens ? first : null;
});

/** Frames on which a body line would help following most. */
export const linesWanted = remembered((swim: Swim): readonly number[] => linesToLay(swim, clockOf(swim)));
