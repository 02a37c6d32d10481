import type { Point } from '../units/point';
import type { DrawingOp } from './drawing-op';

/** The same drawing, moved by whole distances. */
export function movedOp(op: DrawingOp, dx: number, dy: number): DrawingOp {
  const move = ({ x, y }: Point): Point => ({ x: x + dx, y: y + dy });
  switch (op.op) {
    case 'line':
    case 'area':
      return { ...op, points: op.points.map(move) };
    case 'outline':
      return { ...op, contours: op.contours.map((contour) => contour.map(move)) };
    case 'disc':
    case 'words':
      return { ...op, at: move(op.at) };
  }
}
