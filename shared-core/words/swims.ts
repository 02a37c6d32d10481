import { words } from './words';

/** How a swim is named and found. */
export const swimsWords = words({
  fieldsSecondEach: '{short} fields a second, each shown as a picture',
  secondConstant: '{short} a second, constant',
  aboutSecondVariable: 'about {short} a second, variable',
  playedSLife: '{text} played, {played} s in life',
  kb: '{value} kB',
  mb: '{bytes} MB',
  gb: '{bytes} GB',
  swimmerNotNamed: 'Swimmer not named',
  tryAgain: 'Try again',
  swimsCantShown: 'Swims that can’t be shown as they are',
});
