import { words } from './words';

/** Moments and body points by name. */
export const marksWords = words({
  handEntry: 'Hand entry',
  catch: 'Catch',
  handsUnderShoulders: 'Hands under shoulders',
  handsAtNavel: 'Hands at navel',
  handExit: 'Hand exit',
  kickTop: 'Kick top',
  kickBottom: 'Kick bottom',
  breath: 'Breath',
  head: 'Head in',
  breakout: 'Breakout',
  pushOff: 'Push-off',
  distanceMark: 'Distance mark',
  touch: 'Touch',
  fingertip: 'Fingertip',
  wrist: 'Wrist',
  elbow: 'Elbow',
  shoulder: 'Shoulder',
  ear: 'Ear',
  hip: 'Hip',
  knee: 'Knee',
  ankle: 'Ankle',
  toe: 'Toe',
  toThe: 'to the {breathTo}',
});
