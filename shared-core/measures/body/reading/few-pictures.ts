import { localFrameInterval } from '../../../timeline/clip-clock';
import { kickPeriod } from '../../events/kick-period';
import type { BodyContext } from '../context/body-context';
import { keptWith } from '../../../units/kept-with';

/**
 * Fewer pictures of one whole kick than this make single pictures coarse: at 15 a picture is 7 % of a kick, about what
 * the gaps of a stroke are. Our default.
 */
const picturesWanted = 15;

/** Whether the film shows a kick on so few pictures that timing and peaks are read in large steps. */
export const fewPictures = keptWith((context: BodyContext): boolean => {
  // the kick's period is itself a reading of the context: it asks for no notes
  const kick = kickPeriod(context);
  const frame = context.events[context.events.length >> 1]?.event.frame;
  return (
    kick !== null &&
    frame !== undefined &&
    kick.seconds < picturesWanted * localFrameInterval(context.input.clock, frame)
  );
});
