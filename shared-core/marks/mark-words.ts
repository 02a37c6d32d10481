import type { EventKind } from './event-kind';
import type { LandmarkName } from './landmark';
import { marksWords } from '../words/marks';

/** What the coach calls each kind of event, for buttons, undo names and spoken labels. */
export const eventWords: Readonly<Record<EventKind, string>> = {
  entry: marksWords('handEntry'),
  catch: marksWords('catch'),
  shoulder: marksWords('handsUnderShoulders'),
  navel: marksWords('handsAtNavel'),
  exit: marksWords('handExit'),
  'kick-top': marksWords('kickTop'),
  'kick-bottom': marksWords('kickBottom'),
  breath: marksWords('breath'),
  'head-in': marksWords('head'),
  breakout: marksWords('breakout'),
  'push-off': marksWords('pushOff'),
  'distance-mark': marksWords('distanceMark'),
  touch: marksWords('touch'),
};

export const landmarkWords: Readonly<Record<LandmarkName, string>> = {
  fingertip: marksWords('fingertip'),
  wrist: marksWords('wrist'),
  elbow: marksWords('elbow'),
  shoulder: marksWords('shoulder'),
  ear: marksWords('ear'),
  hip: marksWords('hip'),
  knee: marksWords('knee'),
  ankle: marksWords('ankle'),
  toe: marksWords('toe'),
};

/** Both sides' landmarks, in the middle of a sentence. */
export const pluralWords: Readonly<Record<LandmarkName, string>> = {
  fingertip: 'fingertips',
  wrist: 'wrists',
  elbow: 'elbows',
  shoulder: 'shoulders',
  ear: 'head',
  hip: 'hips',
  knee: 'knees',
  ankle: 'ankles',
  toe: 'toes',
};

interface NamedMark {
  readonly kind: EventKind;
  readonly hand: 'left' | 'right' | null;
  readonly breathTo: 'front' | 'left' | 'right' | null;
  readonly metres: number | null;
}

/** "kick top", "hand entry, left", "distance mark, 15 m": a mark in the middle of a sentence. */
export function markPhrase(mark: NamedMark): string {
  const parts = [eventWords[mark.kind].toLowerCase()];
  if (mark.hand) parts.push(mark.hand);
  if (mark.breathTo) parts.push(marksWords('toThe', { breathTo: mark.breathTo }));
  if (mark.metres !== null) parts.push(`${mark.metres} m`);
  return parts.join(', ');
}
