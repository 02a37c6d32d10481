import type { MissingReason } from '../../reading';
import type { BodyContext } from './body-context';

/** The reason why a view can't show what happens along travel and up; null for the side view. */
export function notFromSide(context: BodyContext): MissingReason | null {
  const { view } = context.input.swim.card;
  return view === 'side' ? null : { code: 'view-cannot-show', view };
}

/**
 * The reason why the wave of the body can't be seen: another view, or a swimmer on the side, who beats across the water,
 * toward the camera and away; null for a swimmer on the front or back seen from the side.
 */
export function waveNotSeen(context: BodyContext): MissingReason | null {
  const { sideUp } = context.input.swim.card;
  const onSide = sideUp === 'left-side' || sideUp === 'right-side';
  return notFromSide(context) ?? (onSide ? { code: 'lies-on-side' } : null);
}
