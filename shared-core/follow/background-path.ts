import type { Vision } from './vision';
import type { GreyLevel } from './grey-pyramid';
import type { Point } from '../units/point';
import type { Piece } from './piece';
import { createFlowTeller } from './tell-flow';

/** Forty points' median tells the camera well enough on pictures of a body this long, pixels. Our choice. */
const coarseLength = 200;

/**
 * By picture, how far what lies behind the swimmer has moved in the picture since the first, px: what the camera did.
 * A step that can't be told is taken for no step.
 */
export function backgroundPath(
  vision: Vision,
  piece: Piece,
  pyramids: readonly (readonly GreyLevel[])[],
): readonly Point[] {
  const path: Point[] = [];
  let at: Point = { x: 0, y: 0 };
  const flow = createFlowTeller(vision, pyramids[0], piece.bodyLength, coarseLength);
  try {
    piece.pictures.forEach((picture, i) => {
      const before = piece.pictures[i - 1];
      const pyramid = pyramids[i];
      if (pyramid) flow.show(pyramid);
      const moved = before ? flow.background(before, picture, piece.roughly(i)) : null;
      if (moved) at = { x: at.x + moved.x, y: at.y + moved.y };
      path.push(at);
    });
  } finally {
    flow.close();
  }
  return path;
}
