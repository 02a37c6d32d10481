import type { EventKind } from '#core/marks/event-kind';
import { benchWords } from '#core/words/bench';

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
  entry: benchWords('entry'),
  catch: benchWords('catch'),
  shoulder: benchWords('shoulder'),
  navel: benchWords('navel'),
  exit: benchWords('exit'),
  'kick-top': benchWords('top'),
  'kick-bottom': benchWords('bottom'),
  breath: benchWords('breath'),
  'head-in': benchWords('head2'),
  breakout: benchWords('breakout'),
  'push-off': benchWords('pushOff'),
  'distance-mark': benchWords('distance'),
  touch: benchWords('touch'),
};
