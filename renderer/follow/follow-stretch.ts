import { cropWindows } from '#core/follow/crop-window';
import { type FramePiece, joinPieces } from '#core/follow/follow-pieces';
import { markedPoints } from '#core/follow/marked-points';
import { pointsAround } from '#core/follow/points-around';
import { seenBodyLength } from '#core/follow/seen-body-length';
import type { CameraRun, FollowedRun, Swim } from '#core/swim-file/swim-schema';
import { type ClipClock, localFrameInterval, realTimeOf } from '#core/timeline/clip-clock';
import type { WholePicture } from '#core/follow/whole-picture';
import type { FrameSource } from '../video/frame-source';
import { PictureLost } from '../video/picture-lost';
import { seenAt, stepOf } from '../../shared-core/follow/coarse-task';
import type { ColourPicture } from '../../shared-core/follow/colour-picture';
import type { Follower } from './follower';
import type { PieceTask } from '../../shared-core/follow/piece';
import { layings } from '../../shared-core/follow/settle-piece';

/** Why a stretch could not be followed. */
export type FollowTrouble =
  | { readonly kind: 'too-long'; readonly piece: FramePiece }
  | { readonly kind: 'picture-lost'; readonly frame: number }
  | { readonly kind: 'tracker'; readonly reason: string };

export interface FollowedStretch {
  readonly pieces: readonly FramePiece[];
  readonly runs: readonly FollowedRun[];
  /** What stopped it before its end, if anything; the pieces before are followed all the same. */
  readonly trouble: FollowTrouble | null;
  /** What the camera did, piece by piece, where it could be told. */
  readonly camera: readonly CameraRun[];
}

/** Colours of one piece held at a time, two bytes a pixel. A second of 1080p is about 60 MB. Our limit. */
const mostBytes = 640 * 2 ** 20;

/** Pieces that touch are followed as one up to this many pictures. Our choice: three seconds. */
export const framesAtOnce = 180;

/**
 * Follows every landmark through the given pieces: reads their pictures, hands them to the follower, and collects
 * what it found. `onShare` is called with the share of the work done, 0 to 1.
 */
export async function followStretch(
  swim: Pick<Swim, 'postures' | 'followed' | 'clip'>,
  clock: ClipClock,
  pieces: readonly FramePiece[],
  source: FrameSource,
  follower: Follower,
  onShare: (share: number) => void,
  signal: AbortSignal,
): Promise<FollowedStretch> {
  const bodyLength = seenBodyLength(swim.postures) ?? swim.clip.height / 3;
  const step = stepOf(bodyLength);
  const done: FramePiece[] = [];
  const runs: FollowedRun[] = [];
  const camera: CameraRun[] = [];
  // a picture is read once, looked at both ways, and laid with the others
  const stepsEach = 1 + 2 + layings;
  const all = stepsEach * pieces.reduce((sum, { first, last }) => sum + last - first + 1, 0);
  let steps = 0;
  for (const piece of joinPieces(pieces, framesAtOnce)) {
    const { first, last } = piece;
    const count = last - first + 1;
    const marks = markedPoints(swim.postures, first, last);
    const windows = cropWindows(marks, first, last, bodyLength, swim.clip);
    const window = windows[0];
    if (!window || (2 * window.width * window.height * count) / step ** 2 > mostBytes)
      return { pieces: done, runs, camera, trouble: { kind: 'too-long', piece } };
    const pictures: ColourPicture[] = [];
    const wholes: WholePicture[] = [];
    const apart = lookInterval(clock, first);
    try {
      for (const [i, part] of windows.entries()) {
        signal.throwIfAborted();
        const picture = await source.show(first + i, 1);
        pictures.push({ frame: first + i, ...seenAt(part, step), colours: picture.colours(part, step) });
        if (i % apart === 0 || i === count - 1)
          wholes.push({ frame: first + i, ...picture.smallGrey(smallStep(swim.clip.width)) });
        onShare((steps + i) / all);
      }
      const times = pictures.map(({ frame }): number => realTimeOf(clock, frame));
      const around = pointsAround(swim.postures, swim.followed, piece, bodyLength).map((point) => ({
        ...point,
        time: realTimeOf(clock, point.frame) as number,
      }));
      const task: PieceTask = { pictures, wholes, times, marks, around, bodyLength, step };
      const found = await follower.follow(task, (made) => onShare((steps + count + made) / all), signal);
      runs.push(...found.runs);
      if (found.camera) camera.push(found.camera);
    } catch (problem) {
      signal.throwIfAborted();
      if (problem instanceof PictureLost)
        return { pieces: done, runs, camera, trouble: { kind: 'picture-lost', frame: problem.frame } };
      const reason = problem instanceof Error ? problem.message : String(problem);
      return { pieces: done, runs, camera, trouble: { kind: 'tracker', reason } };
    }
    steps += stepsEach * count;
    done.push(piece);
  }
  return { pieces: done, runs, camera, trouble: null };
}

/** The background is looked at so often, real seconds: hands shake a camera a few times a second. Our choice. */
const lookSeconds = 0.05;
/** And on pictures about this wide. */
const smallWidth = 960;

const lookInterval = (clock: ClipClock, frame: number): number =>
  Math.max(1, Math.round(lookSeconds / localFrameInterval(clock, frame)));
const smallStep = (width: number): number => Math.max(1, Math.round(width / smallWidth));
