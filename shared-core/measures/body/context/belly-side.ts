import type { SwimCard } from '../../../swim-file/swim-schema';
import { turnedAngle } from '../points/angles';
import { type LandmarkColumns, pointAt } from '../points/landmark-column';

/**
 * Which way the belly lies in the pool plane: 1 where it is below the back in the picture, −1 where it is above; null where
 * the body doesn't bend in the picture's plane or the picture doesn't say.
 *
 * From the side of a swimmer on the front or back the card says it. From below or above, a swimmer on the side beats in
 * the picture's plane as well, but which way round the camera was held is not known: there the knee says it, as it bends
 * one way only.
 */
export function bellySide(
  { view, sideUp }: Pick<SwimCard, 'view' | 'sideUp'>,
  columns: LandmarkColumns,
): 1 | -1 | null {
  const onSide = sideUp === 'left-side' || sideUp === 'right-side';
  if (view === 'side') return onSide ? null : sideUp === 'back' ? -1 : 1;
  return onSide && (view === 'below' || view === 'above') ? sideOfKnee(columns) : null;
}

/** A knee must be bent this far on some posture to say which way it bends, degrees: marks alone don't bend it so. Our default. */
const bentBelow = 160;

function sideOfKnee({ hip, knee, ankle }: LandmarkColumns): 1 | -1 | null {
  let most = bentBelow;
  let side: 1 | -1 | null = null;
  for (let place = 0; place < knee.x.length; place++) {
    const [above, at, below] = [pointAt(hip, place), pointAt(knee, place), pointAt(ankle, place)];
    const turned = above && at && below && turnedAngle(above, at, below, 1);
    if (turned === undefined || turned === null) continue;
    const inner = turned > 180 ? 360 - turned : Math.abs(turned);
    if (inner >= most) continue;
    most = inner;
    side = turned > 0 && turned < 180 ? 1 : -1;
  }
  return side;
}
