import { cameraPath } from '#core/follow/camera-path';
import type { FramePiece } from '#core/follow/follow-pieces';
import { keepSurer } from '#core/follow/keep-surer';
import { seenBodyLength } from '#core/follow/seen-body-length';
import { landmarkWords } from '#core/marks/mark-words';
import type { Swim } from '#core/swim-file/swim-schema';
import { assumedMarkingError } from '#core/uncertainty/assumed-marking-error';
import { type BenchSession, clockOf } from '../bench/bench-session';
import { goTo } from '../bench/stepping';
import { endBodyLine, startBodyLine } from '../stage/tools/body-line-tool';
import { setFollowed } from '../state/follow-commands';
import { postureOn } from '../state/selectors';
import { allPieces, linesWanted, openPieces, questionsOf } from './follow-selectors';
import { type FollowTrouble, followStretch } from './follow-stretch';
import type { Follower } from './follower';
import { startFollower } from './start-follower';

/** Bytes of decoded pictures held while following: enough to decode ahead. */
const readingBudget = 96 * 2 ** 20;

/** One worker for the window: it takes a second to load. Made when first needed. */
let follower: Follower | null = null;
/** What is under way on each open bench, to be cancelled. */
const underWay = new WeakMap<BenchSession, AbortController>();

function troubleWords(trouble: FollowTrouble): string {
  switch (trouble.kind) {
    case 'too-long':
      return `Too far between body lines: lay one between frames ${trouble.piece.first + 1} and ${trouble.piece.last + 1}, then follow again.`;
    case 'picture-lost':
      return `Frame ${trouble.frame + 1} can’t be decoded: nothing was followed from there on.`;
    case 'tracker':
      return `Following stopped by itself (${trouble.reason}). Nothing is lost; try again.`;
  }
}

/** What a moving camera means for the readings; null where it stood still. */
function cameraWords(swim: Swim): string | null {
  switch (cameraPath(swim, assumedMarkingError(swim.clip.height).scenePointSd).state) {
    case 'stands':
      return null;
    case 'carried':
      return 'The camera moved: its path is kept with the swim and taken out of speed, distance and heights, its error added to their intervals.';
    case 'turned':
      return 'The camera turned or zoomed: speed and distance are not given, and lengths are off. Film with a camera that stands.';
    case 'loose':
      return 'The camera moved. Mark one thing that stands still beside the swimmer on two frames far apart (7): then speed and distance can be read. Until then they are not given.';
  }
}

/** Follows what is new between the body lines, or everything again. One undo step. */
export async function followPoints(session: BenchSession, what: 'new' | 'all'): Promise<void> {
  const { document, film, follow } = session;
  if (follow.getState().share !== null) return;
  const swim = document.swim();
  const pieces: readonly FramePiece[] = what === 'all' ? allPieces(swim.postures) : openPieces(swim);
  if (pieces.length === 0) {
    follow.setState({
      outcome:
        allPieces(swim.postures).length === 0
          ? 'Lay a body line on two frames first: the points are followed between them.'
          : 'Everything between the body lines is followed already.',
    });
    return;
  }
  const { reopen } = film.getState();
  if (!reopen) {
    follow.setState({
      outcome: film.getState().trouble
        ? 'There are no pictures to follow the points on.'
        : 'The film is still being opened. Try again when its picture is there.',
    });
    return;
  }
  const stop = new AbortController();
  underWay.set(session, stop);
  follow.setState({ share: 0, outcome: null });
  try {
    const opened = await reopen(readingBudget, stop.signal);
    if (!opened.ok) {
      follow.setState({ outcome: 'The clip could not be opened a second time to follow the points.' });
      return;
    }
    try {
      follower ??= startFollower();
      const share = (done: number): void => follow.setState({ share: done });
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
          ? 'Followed. Every point is sure.'
          : null;
      const words = [said, cameraWords(document.swim())].filter((line) => line !== null);
      follow.setState({ outcome: words.length > 0 ? words.join(' ') : null });
    } finally {
      opened.value.close();
    }
  } catch (problem) {
    if (!stop.signal.aborted) throw problem;
    follow.setState({ outcome: 'Cancelled: nothing was changed.' });
  } finally {
    underWay.delete(session);
    follow.setState({ share: null });
  }
}

export function cancelFollowing(session: BenchSession): void {
  underWay.get(session)?.abort();
}

/** Goes to the point that helps most and holds out the body line for it; says so when nothing is asked. */
export function askNext(session: BenchSession): void {
  const question = questionsOf(session.document.swim())[0];
  if (!question) {
    session.follow.setState({ asked: null });
    session.say('No point is unsure');
    return;
  }
  ask(session, question);
}

/** Goes to the next marked kick top that wants a body line, and holds the line out; says so when none does. */
export function layNextLine(session: BenchSession): void {
  const frame = linesWanted(session.document.swim())[0];
  if (frame === undefined) {
    session.say('No marked kick top wants a body line');
    return;
  }
  goTo(session, frame);
  startBodyLine(session);
  session.say(`Lay the body line on frame ${frame + 1}`);
}

export function ask(
  session: BenchSession,
  question: Pick<ReturnType<typeof questionsOf>[number], 'landmark' | 'frame'>,
): void {
  const { landmark, frame } = question;
  session.follow.setState({ asked: { landmark, frame }, open: true });
  goTo(session, frame);
  startBodyLine(session, landmark);
  session.say(`Mark the ${landmarkWords[landmark].toLowerCase()} on frame ${frame + 1}`);
}

/** The asked point was laid or said to be hidden: that stretch is followed again, and the next one is asked. */
export async function hearAnswer(session: BenchSession): Promise<void> {
  const { asked } = session.follow.getState();
  if (!asked) return;
  const posture = postureOn(session.document.swim(), asked.frame);
  if (!posture?.points[asked.landmark] && !posture?.hidden.includes(asked.landmark)) return;
  session.follow.setState({ asked: null });
  endBodyLine(session);
  await followPoints(session, 'new');
}
