import type { Sightings } from './blend-sightings';
import type { GreyLevel } from './grey-pyramid';
import type { StretchRound } from './lay-together';
import type { LandmarkName } from '../marks/landmark';
import type { Point } from '../units/point';
import type { GreyPicture } from './grey-picture';
import { makePiece, type Piece, type PieceTask } from './piece';
import { settleBodies } from './settle-bodies';

/**
 * What both ways together put near is laid three times over, on the halved picture first and finely only at the end. Three
 * and these rounds were chosen on the sample clips: a fourth time brings little.
 */
const plans: readonly (readonly StretchRound[])[] = [
  [{ level: 1, rounds: 4 }],
  [{ level: 1, rounds: 4 }],
  [
    { level: 1, rounds: 2 },
    { level: 0, rounds: 2 },
  ],
];
/** How often all pictures of a piece are laid together. */
export const layings = plans.length;

/**
 * Lays the bodies of all pictures together, from where both ways put them. Before each time the marked pictures are compared
 * anew: a single mark, with what was found of the limbs it holds, shows how they look there, so that a limb that
 * turns or bends between two whole body lines is known by more than those. `tick` is called once for each picture and time.
 */
export function settlePiece(
  task: PieceTask,
  pictures: readonly GreyPicture[],
  pyramids: readonly (readonly GreyLevel[])[],
  piece: Piece,
  camera: readonly Point[],
  blendedOn: (index: number, landmark: LandmarkName) => Point | null,
  tick: () => void,
): readonly Sightings[] {
  let placeOn = (index: number, landmark: LandmarkName): Point | null =>
    piece.mark(index, landmark) ?? blendedOn(index, landmark);
  let richer = piece;
  let settled: readonly Sightings[] = [];
  for (const plan of plans) {
    richer = makePiece(task, pictures, pyramids, { placeOn, known: richer.known });
    const laid = settleBodies(richer, pyramids, camera, placeOn, plan);
    placeOn = (index, landmark) => laid[index]?.get(landmark)?.at ?? null;
    settled = laid;
    for (const _ of pictures) tick();
  }
  return settled;
}
