/** Every kind of instant a coach can mark, in the order of one stroke and one length. */
export const eventKinds = [
  'entry',
  'catch',
  'shoulder',
  'navel',
  'exit',
  'kick-top',
  'kick-bottom',
  'breath',
  'head-in',
  'breakout',
  'push-off',
  'distance-mark',
  'touch',
] as const;
export type EventKind = (typeof eventKinds)[number];

export type Staff = 'hands' | 'feet' | 'head' | 'course';

const staffs: Record<EventKind, Staff> = {
  entry: 'hands',
  catch: 'hands',
  shoulder: 'hands',
  navel: 'hands',
  exit: 'hands',
  'kick-top': 'feet',
  'kick-bottom': 'feet',
  breath: 'head',
  'head-in': 'head',
  breakout: 'head',
  'push-off': 'course',
  'distance-mark': 'course',
  touch: 'course',
};

/** The staff of the score on which a kind of event is written. */
export function staffOf(kind: EventKind): Staff {
  return staffs[kind];
}
