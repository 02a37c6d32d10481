import { bodyBetween } from '#core/follow/body-between';
import { cameraLooked } from '#core/follow/camera-path';
import { seenBodyLength } from '#core/follow/seen-body-length';
import type { CameraRun, Swim } from '#core/swim-file/swim-schema';
import { localFrameInterval } from '#core/timeline/clip-clock';
import { type OpenSwim, clockOf } from '../open-swim/open-swim';
import { keepLook, stoodStill } from '../open-swim/camera-commands';
import type { FrameSource } from '../video/frame-source';
import { PictureLost } from '../video/picture-lost';
import { askLooker } from './ask-looker';
import { fewLooks } from '../../shared-core/follow/camera-moves';
import type { WholePicture } from '#core/follow/whole-picture';
import type { CameraTask } from './look-message';
import { cameraWords } from '#core/words/camera';

/** Bytes of decoded pictures held while looking. */
const readingBudget = 96 * 2 ** 20;
/** The background is looked at so often, real seconds: hands shake a camera a few times a second. Our choice. */
const lookSeconds = 0.05;
/** And on pictures about this wide, half a megabyte each; of a longer stretch the looks lie farther apart. */
const smallWidth = 960;
const mostLooks = 400;

const underWay = new WeakMap<OpenSwim, AbortController>();

/** The first and the last posture, when there is something between them; null else. */
function markedSpan({ postures }: Swim): { readonly first: number; readonly last: number } | null {
  const frames = postures.map(({ frame }) => frame);
  const [first, last] = [Math.min(...frames), Math.max(...frames)];
  return last > first ? { first, last } : null;
}

/** Whether readings take the camera to have stood without anyone having looked. */
export const cameraUnlooked = (swim: Swim): boolean =>
  swim.card.view === 'side' && markedSpan(swim) !== null && !cameraLooked(swim);

/**
 * Looks whether the camera moved between the first and the last posture: at a few pictures, and only where it did not stand
 * at all that are needed to tell its path. What is found is kept with the swim beside the coach's steps, not as one of them.
 */
export async function lookAtCamera(session: OpenSwim): Promise<void> {
  const { document, film, follow } = session;
  const { reopen } = film.getState();
  const swim = document.swim();
  const span = markedSpan(swim);
  if (!reopen || !span || underWay.has(session)) return;
  const stop = new AbortController();
  underWay.set(session, stop);
  follow.setState({ camera: { state: 'looking', share: 0 } });
  const onShare = (share: number): void => follow.setState({ camera: { state: 'looking', share } });
  try {
    const opened = await reopen(readingBudget, stop.signal);
    if (!opened.ok) {
      follow.setState({ camera: null });
      session.say(cameraWords('clipCouldNot'));
      return;
    }
    try {
      const run = await cameraRunOf(swim, span, opened.value, onShare, stop.signal);
      stop.signal.throwIfAborted();
      // what was marked meanwhile may lie outside: then it is looked at again
      if (run) document.amend(keepLook(run));
      follow.setState({ camera: run ? null : { state: 'unclear' } });
    } finally {
      opened.value.close();
    }
  } catch (problem) {
    // stopped, or not to be had: as before, nobody has looked
    follow.setState({ camera: null });
    if (stop.signal.aborted) return;
    session.say(
      problem instanceof PictureLost
        ? cameraWords('frameCantDecoded', { frame: problem.frame + 1 })
        : cameraWords('lookingAtCameraStopped', { problem: String(problem) }),
    );
  } finally {
    underWay.delete(session);
  }
}

export function stopLooking(session: OpenSwim): void {
  underWay.get(session)?.abort();
}

/** The coach says that the camera stood. */
export function sayItStood(session: OpenSwim): void {
  const span = markedSpan(session.document.swim());
  if (span) session.document.run(stoodStill(span));
  session.follow.setState({ camera: null });
}

async function cameraRunOf(
  swim: Swim,
  { first, last }: { readonly first: number; readonly last: number },
  source: FrameSource,
  onShare: (share: number) => void,
  signal: AbortSignal,
): Promise<CameraRun | null> {
  const clock = clockOf(swim);
  const postures = [...swim.postures].sort((a, b) => a.frame - b.frame);
  const bodyLength = seenBodyLength(swim.postures) ?? swim.clip.height / 3;
  const step = Math.max(1, Math.round(swim.clip.width / smallWidth));
  const look = async (frames: readonly number[], onlyStood: boolean): Promise<CameraRun | null> => {
    const pictures: WholePicture[] = [];
    for (const [i, frame] of frames.entries()) {
      signal.throwIfAborted();
      pictures.push({ frame, ...(await source.show(frame, 1)).smallGrey(step) });
      onShare((0.7 * i) / frames.length);
    }
    const bodies = pictures.map(({ frame }) => bodyBetween(postures, frame));
    const task: CameraTask = { pictures, bodies, bodyLength, onlyStood };
    return askLooker(task, signal);
  };
  const evenly = (count: number): readonly number[] => [
    ...new Set(
      Array.from({ length: count }, (_, i) => Math.round(first + ((last - first) * i) / (count - 1))),
    ),
  ];
  const stood = await look(evenly(fewLooks), true);
  if (stood) return stood;
  const apart = Math.max(1, Math.round(lookSeconds / localFrameInterval(clock, first)));
  return look(evenly(Math.min(mostLooks, Math.ceil((last - first) / apart) + 1)), false);
}
