import { cameraPath } from '#core/follow/camera-path';
import type { FollowedPoint } from '#core/follow/followed-posture';
import type { FramePiece } from '#core/follow/follow-pieces';
import { keepSurer } from '#core/follow/keep-surer';
import { seenBodyLength } from '#core/follow/seen-body-length';
import type { Swim } from '#core/swim-file/swim-schema';
import { assumedMarkingError } from '#core/uncertainty/assumed-marking-error';
import { beginWork } from '../ui/work-in-hand';
import { type OpenSwim, clockOf } from '../open-swim/open-swim';
import { goTo } from '../open-swim/stepping';
import { endBodyLine, isAnswered, startBodyLine } from '../stage/tools/body-line-tool';
import { setFollowed } from '../open-swim/follow-commands';
import { keepFollowedPoint } from '../open-swim/posture-commands';
import { postureOn } from '../open-swim/selectors';
import {
  allPieces,
  followedOf,
  learnFromAnswer,
  linesWanted,
  openPieces,
  questionsOf,
} from '../open-swim/follow-selectors';
import { type FollowTrouble, followStretch } from './follow-stretch';
import type { Follower } from './follower';
import { startFollower } from './start-follower';
import { followWords } from '#core/words/follow';

/** Bytes of decoded pictures held while following: enough to decode ahead. */
const readingBudget = 96 * 2 ** 20;

/** One worker for the window: it takes a second to load. Made when first needed. */
let follower: Follower | null = null;
/** What is under way on each open bench, to be cancelled. */
const underWay = new WeakMap<OpenSwim, AbortController>();

function troubleWords(trouble: FollowTrouble): string {
  switch (trouble.kind) {
    case 'too-long':
      return followWords('tooFarBetween', { first: trouble.piece.first + 1, last: trouble.piece.last + 1 });
    case 'picture-lost':
      return followWords('frameCantDecoded', { frame: trouble.frame + 1 });
    case 'tracker':
      return followWords('followingStoppedItself', { reason: trouble.reason });
  }
}

/** What a moving camera means for the readings; null where it stood still. */
function cameraWords(swim: Swim): string | null {
  switch (cameraPath(swim, assumedMarkingError(swim.clip.height).scenePointSd).state) {
    case 'stands':
      return null;
    case 'carried':
      return followWords('cameraMovedIts');
    case 'turned':
      return followWords('cameraTurnedOr');
    case 'loose':
      return followWords('cameraMovedMark');
  }
}

/** Follows what is new between the body lines, or everything again. One undo step. */
export async function followPoints(session: OpenSwim, what: 'new' | 'all'): Promise<void> {
  const { document, film, follow } = session;
  if (follow.getState().share !== null) return;
  const swim = document.swim();
  const pieces: readonly FramePiece[] = what === 'all' ? allPieces(swim.postures) : openPieces(swim);
  if (pieces.length === 0) {
    follow.setState({
      outcome:
        allPieces(swim.postures).length === 0
          ? followWords('layBodyLineTwo')
          : followWords('everythingBetweenBody'),
    });
    return;
  }
  const { reopen } = film.getState();
  if (!reopen) {
    follow.setState({
      outcome: film.getState().trouble ? followWords('thereNoPictures') : followWords('filmStillBeing'),
    });
    return;
  }
  const stop = new AbortController();
  underWay.set(session, stop);
  follow.setState({ share: 0, outcome: null });
  const work = beginWork();
  try {
    const opened = await reopen(readingBudget, stop.signal);
    if (!opened.ok) {
      follow.setState({ outcome: followWords('clipCouldNot') });
      return;
    }
    try {
      follower ??= startFollower();
      const share = (done: number): void => {
        follow.setState({ share: done });
        work.tell(done);
      };
      const clock = clockOf(swim);
      const found = await followStretch(swim, clock, pieces, opened.value, follower, share, stop.signal);
      stop.signal.throwIfAborted();
      const length = seenBodyLength(swim.postures) ?? swim.clip.height / 3;
      // marks may have been moved before everything is followed again: then what was there is no guide
      const runs = what === 'all' ? found.runs : keepSurer(swim.followed, found.runs, swim.postures, length);
      if (found.pieces.length > 0) document.run(setFollowed(found.pieces, runs, found.camera));
      const questions = questionsOf(document.swim()).length;
      const said = found.trouble
        ? troubleWords(found.trouble)
        : questions === 0
          ? followWords('followedEveryPoint')
          : null;
      const words = [said, cameraWords(document.swim())].filter((line) => line !== null);
      follow.setState({ outcome: words.length > 0 ? words.join(' ') : null });
    } finally {
      opened.value.close();
    }
  } catch (problem) {
    if (!stop.signal.aborted) throw problem;
    follow.setState({ outcome: followWords('cancelledNothingChanged') });
  } finally {
    underWay.delete(session);
    follow.setState({ share: null });
    work.end();
  }
}

export function cancelFollowing(session: OpenSwim): void {
  underWay.get(session)?.abort();
}

/**
 * Goes to the point that helps most and holds out the body line for it; asked again, to the one after it. Says so when nothing
 * is asked.
 */
export function askNext(session: OpenSwim): void {
  const questions = questionsOf(session.document.swim());
  const { asked } = session.follow.getState();
  const at = questions.findIndex(
    ({ landmark, frame }) => landmark === asked?.landmark && frame === asked.frame,
  );
  const question = questions[(at + 1) % Math.max(1, questions.length)];
  if (!question) {
    stopAsking(session);
    session.say(followWords('noPointUnsure'));
    return;
  }
  ask(session, question);
}

/** Puts the question away; what was answered stays. */
export function stopAsking(session: OpenSwim): void {
  if (!session.follow.getState().asked) return;
  session.follow.setState({ asked: null });
  endBodyLine(session);
}

/** The point that is asked for, where following put it; null when none is asked or none was put there. */
export function askedPoint(session: OpenSwim): FollowedPoint | null {
  const { asked } = session.follow.getState();
  return asked ? (followedOf(session.document.swim()).get(asked.frame)?.get(asked.landmark) ?? null) : null;
}

/** The point asked for is right as it is: it is the coach's from now on. */
export function keepAsked(session: OpenSwim): void {
  const { asked } = session.follow.getState();
  const point = askedPoint(session);
  if (!asked || !point || !isShown(session, asked.frame)) return;
  session.document.run(keepFollowedPoint(asked.frame, asked.landmark, point));
}

/** Nobody can judge a point on a picture that is still on its way. */
const isShown = (session: OpenSwim, frame: number): boolean => session.view.getState().shownFrame === frame;

type Question = Pick<ReturnType<typeof questionsOf>[number], 'landmark' | 'frame'>;

/** Goes to the next marked kick top that needs a body line, and holds the line out; says so when none does. */
export function layNextLine(session: OpenSwim): void {
  const frame = linesWanted(session.document.swim())[0];
  if (frame === undefined) {
    session.say(followWords('noMarkedKick'));
    return;
  }
  goTo(session, frame);
  startBodyLine(session);
  session.say(followWords('layBodyLineFrame', { frame: frame + 1 }));
}

export function ask(session: OpenSwim, question: Question): void {
  const { landmark, frame } = question;
  session.follow.setState({ asked: { landmark, frame }, open: true });
  goTo(session, frame);
  startBodyLine(session, landmark);
}

/**
 * The asked point was laid, called right or said to be hidden: the next one is asked at once, and what the answer touches is
 * followed again meanwhile.
 */
export async function hearAnswer(session: OpenSwim): Promise<void> {
  const { asked } = session.follow.getState();
  if (!asked || !isAnswered(postureOn(session.document.swim(), asked.frame), asked.landmark)) return;
  learn(session, asked);
  stopAsking(session);
  askFirst(session);
  await followAnswers(session);
}

/** What the answer told: how far off the followed point was. A hidden one tells nothing. */
function learn(session: OpenSwim, { landmark, frame }: Question): void {
  const swim = session.document.swim();
  const was = followedOf(swim).get(frame)?.get(landmark);
  const is = postureOn(swim, frame)?.points[landmark];
  const length = seenBodyLength(swim.postures);
  if (!was || !is || length === null) return;
  learnFromAnswer(swim, {
    confidence: was.confidence,
    offShare: Math.hypot(was.x - is.x, was.y - is.y) / length,
  });
}

/** Asks the first question, unless the coach has taken up something else meanwhile. */
function askFirst(session: OpenSwim): void {
  const [first] = questionsOf(session.document.swim());
  const { open } = session.follow.getState();
  if (first && open && session.view.getState().tool === 'point') ask(session, first);
}

const framesOf = (pieces: readonly FramePiece[]): string =>
  pieces.map(({ first, last }) => `${first}-${last}`).join(' ');

/** Follows what answers touched, until nothing is left to follow; then a question that has become needless is put away. */
async function followAnswers(session: OpenSwim): Promise<void> {
  const { document, follow } = session;
  // the run under way looks at its end whether there is more
  if (follow.getState().share !== null) return;
  for (let before = ''; ; ) {
    const open = framesOf(openPieces(document.swim()));
    // what could not be followed is not tried for ever
    if (open === '' || open === before) break;
    before = open;
    await followPoints(session, 'new');
  }
  const { asked } = follow.getState();
  const questions = questionsOf(document.swim());
  const isStill = questions.some(
    ({ landmark, frame }) => landmark === asked?.landmark && frame === asked.frame,
  );
  if (asked && !isStill) {
    stopAsking(session);
    askFirst(session);
  }
  if (questions.length === 0) session.say(followWords('noPointUnsure'));
}
