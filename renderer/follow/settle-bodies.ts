import { alignBody } from '#core/follow/align-body';
import type { Expected } from '#core/follow/body-priors';
import type { GreyLevel } from '#core/follow/grey-pyramid';
import type { LandmarkName } from '#core/marks/landmark';
import type { Point } from '#core/units/brand';
import { sightingsOf, type Sightings } from './follow-pass';
import { markedSd, type Piece } from './piece';

/** Coarse sizes only help to find what is far off, and the two ways together are near. */
const levels = 3;
/** What both ways missed together may be farther off than a single step. Set on the sample clips. */
const looser = 2;

/** Lays the body once more on every picture, from where both ways together put it. */
export function settleBodies(
  piece: Piece,
  pyramids: readonly (readonly GreyLevel[])[],
  placeOn: (index: number, landmark: LandmarkName) => Point | null,
): readonly Sightings[] {
  return piece.pictures.map((picture, i) => {
    const expected = new Map<LandmarkName, Expected>();
    for (const name of piece.landmarksOn(i)) {
      const mark = piece.mark(i, name);
      const at = mark ?? placeOn(i, name);
      if (at)
        expected.set(name, {
          at: { x: at.x - picture.x - 0.5, y: at.y - picture.y - 0.5 },
          sd: mark ? markedSd : looser * piece.freedom(name),
        });
    }
    const pyramid = pyramids[i]?.slice(0, levels) ?? [];
    return sightingsOf(alignBody(pyramid, piece.templatesFor(i), expected, piece.lengthsOn(i)), picture);
  });
}
