import type { CameraRun } from '../swim-file/swim-schema';
import type { FramePiece } from './follow-pieces';

/**
 * What is known of the camera after `pieces` were followed anew: earlier runs that lie on their frames go, the new ones come
 * in. Ascending. A run that only touches a piece with its first or last frame stays.
 */
export function keepCamera(
  before: readonly CameraRun[],
  pieces: readonly FramePiece[],
  fresh: readonly CameraRun[],
): readonly CameraRun[] {
  const kept = before.filter(({ frames }) => {
    const [first, last] = [frames[0] ?? 0, frames.at(-1) ?? 0];
    return pieces.every((piece) => last <= piece.first || first >= piece.last);
  });
  return [...kept, ...fresh].sort((a, b) => (a.frames[0] ?? 0) - (b.frames[0] ?? 0));
}
