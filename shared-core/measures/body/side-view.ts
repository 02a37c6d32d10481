import type { MissingReason } from '../reading';
import type { BodyContext } from './body-context';

/**
 * The reason why a view can't show what happens along travel and up; null for the side view. A swimmer on the side
 * beats across the water, which only a view from above or below shows: that is not measured here either.
 */
export function notFromSide(context: BodyContext): MissingReason | null {
  const { view } = context.input.swim.card;
  return view === 'side' ? null : { code: 'view-cannot-show', view };
}
