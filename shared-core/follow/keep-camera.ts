import type { CameraRun } from '../swim-file/swim-schema';
import type { FramePiece } from './follow-pieces';

/**
 * What is known of the camera after `pieces` were followed anew: earlier runs that lie on their frames go, the new ones come
 * in. Ascending. A run that only touches a piece with its first or last frame stays, and so does one that goes farther than the
 * piece both ways or on one side: a slow movement adds up in a long look and is lost in short ones.
 */
export function keepCamera(
  before: readonly CameraRun[],
  pieces: readonly FramePiece[],
  fresh: readonly CameraRun[],
): readonly CameraRun[] {
  const span = ({ frames }: CameraRun): FramePiece => ({
    first: frames[0] as number,
    last: frames.at(-1) ?? 0,
  });
  const holds = (outer: FramePiece, inner: FramePiece): boolean =>
    outer.first <= inner.first && outer.last >= inner.last;
  const kept = before.filter((run) => {
    const own = span(run);
    return pieces.every(
      (piece) =>
        own.last <= piece.first ||
        own.first >= piece.last ||
        (holds(own, piece) && own.last - own.first > piece.last - piece.first),
    );
  });
  const news = fresh.filter((run) => !kept.some((old) => holds(span(old), span(run))));
  return [...kept, ...news].sort((a, b) => span(a).first - span(b).first);
}
