import type { EventKind } from './event-kind';
import type { LandmarkName } from './landmark';

/** What the coach calls each kind of event, for buttons, undo names and spoken labels. */
export const eventWords: Readonly<Record<EventKind, string>> = {
  entry: 'Hand entry',
  catch: 'Catch',
  shoulder: 'Hands under shoulders',
  navel: 'Hands at navel',
  exit: 'Hand exit',
  'kick-top': 'Kick top',
  'kick-bottom': 'Kick bottom',
  breath: 'Breath',
  'head-in': 'Head in',
  breakout: 'Breakout',
  'push-off': 'Push-off',
  'distance-mark': 'Distance mark',
  touch: 'Touch',
};

export const landmarkWords: Readonly<Record<LandmarkName, string>> = {
  fingertip: 'Fingertip',
  wrist: 'Wrist',
  elbow: 'Elbow',
  shoulder: 'Shoulder',
  ear: 'Ear',
  hip: 'Hip',
  knee: 'Knee',
  ankle: 'Ankle',
  toe: 'Toe',
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
  if (mark.breathTo) parts.push(`to the ${mark.breathTo}`);
  if (mark.metres !== null) parts.push(`${mark.metres} m`);
  return parts.join(', ');
}
