import type { EventKind } from '#core/marks/event-kind';

/** Our own keys, laid out as the pads are: hands on the top row, feet and head under it, course on the lowest. */
export const padKeys: Readonly<Record<EventKind, string>> = {
  entry: 'q',
  catch: 'w',
  shoulder: 'e',
  navel: 'r',
  exit: 't',
  'kick-top': 'a',
  'kick-bottom': 's',
  breath: 'd',
  'head-in': 'f',
  breakout: 'g',
  'push-off': 'z',
  'distance-mark': 'x',
  touch: 'c',
};

/** Words on the pad, under the staff's own heading. */
export const padWords: Readonly<Record<EventKind, string>> = {
  entry: 'Entry',
  catch: 'Catch',
  shoulder: 'Shoulder',
  navel: 'Navel',
  exit: 'Exit',
  'kick-top': 'Top',
  'kick-bottom': 'Bottom',
  breath: 'Breath',
  'head-in': 'Head in',
  breakout: 'Breakout',
  'push-off': 'Push-off',
  'distance-mark': 'Distance',
  touch: 'Touch',
};
