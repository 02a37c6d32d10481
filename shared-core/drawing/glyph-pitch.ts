import type { EventKind } from '../marks/event-kind';

/**
 * How high on its staff a kind is written, 0 top to 1 bottom: hands as deep as they are in the water, feet at the
 * top and bottom of the kick. So the glyphs of a stroke make a figure, as notes do.
 */
export const glyphPitch: Readonly<Record<EventKind, number>> = {
  entry: 0.2,
  catch: 0.5,
  shoulder: 0.8,
  navel: 0.62,
  exit: 0.2,
  'kick-top': 0.15,
  'kick-bottom': 0.85,
  breath: 0.5,
  'head-in': 0.5,
  breakout: 0.5,
  'push-off': 0.5,
  'distance-mark': 0.5,
  touch: 0.5,
};
