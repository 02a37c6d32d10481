import type { CropWindow } from './crop-window';
import type { FollowedRun } from '../swim-file/swim-schema';
import type { FollowedPiece } from './followed-run';
import type { PieceTask } from './piece';

/** A body longer than this is followed on pictures of half the size: a limb's edges still tell a tenth of a pixel. Our choice. */
const longBody = 400;

/** Every how manyth pixel of the film is looked at. */
export const stepOf = (bodyLength: number): 1 | 2 => (bodyLength > longBody ? 2 : 1);

/** A part of the film's picture as it is seen with every `step`th pixel. */
export function seenAt({ x, y, width, height }: CropWindow, step: number): CropWindow {
  return { x, y, width: Math.floor(width / step), height: Math.floor(height / step) };
}

/** A task's places in pixels that are `step` of the film's wide. */
export function coarseTask(task: PieceTask, step: number): PieceTask {
  if (step === 1) return task;
  const smaller = <P extends { readonly x: number; readonly y: number }>(point: P): P => ({
    ...point,
    x: point.x / step,
    y: point.y / step,
  });
  return {
    ...task,
    pictures: task.pictures.map(smaller),
    marks: task.marks.map(smaller),
    around: task.around.map((point) => ({ ...smaller(point), sd: point.sd / step })),
    bodyLength: task.bodyLength / step,
  };
}

/** What was found, back in the film's pixels; a hundredth of one is finer than any mark. */
export function fineFound({ runs }: FollowedPiece, step: number): FollowedPiece {
  const larger = (value: number): number => Math.round(100 * step * value) / 100;
  return {
    runs: runs.map(
      (run): FollowedRun => ({
        ...run,
        points: run.points.map(([x, y, confidence]) => [larger(x), larger(y), confidence]),
      }),
    ),
  };
}
