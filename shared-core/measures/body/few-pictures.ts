import { localFrameInterval } from '../../timeline/clip-clock';
import { kickPeriod } from '../events/kick-period';
import type { BodyContext } from './body-context';

/**
 * Fewer pictures of one whole kick than this make single pictures coarse: at 15 a picture is 7 % of a kick, about what
 * the gaps of a stroke are. Our default.
 */
const picturesWanted = 15;

const kept = new WeakMap<BodyContext, boolean>();

/** Whether the film shows a kick on so few pictures that timing and peaks are read in large steps. */
export function fewPictures(context: BodyContext): boolean {
  const known = kept.get(context);
  if (known !== undefined) return known;
  // the kick's period is itself a reading of the context: it asks for no notes
  const kick = kickPeriod(context);
  const frame = context.events[context.events.length >> 1]?.event.frame;
  const found =
    kick !== null &&
    frame !== undefined &&
    kick.seconds < picturesWanted * localFrameInterval(context.input.clock, frame);
  kept.set(context, found);
  return found;
}
