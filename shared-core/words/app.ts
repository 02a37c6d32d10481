import { words } from './words';

/** The frame around the screens. */
export const appWords = words({
  nothingHere: 'There is nothing at this address.',
  otherVersion: 'It may come from another version of Submark. Your swims are on the shelf.',
  toShelf: 'To the shelf',
  keysLook: 'Keys and look',
  nextLookDimLight: 'Next look: dim, light, glare',
  look: 'Look: {theme}',
  go: 'Go to {label}',
  everywhere: 'Everywhere',
  submarkScreen: 'Submark, {screen} screen',
  error: 'Error',
  at: 'at {place}',
  somethingSubmarkBroke: 'Something in Submark broke',
  yourMarksSafe: 'Your marks are safe: every change is kept as it is made. Open the screen again to go on.',
  openAgain: 'Open again',
  backShelf: 'Back to the shelf',
  report: 'Report it',
  allReportHolds:
    'This is all a report holds: no names, no film, no marks, no addresses. Nothing is sent by itself; copy it to whoever looks after Submark.',
  copyReport: 'Copy the report',
  copied: 'Copied.',
  windowMayNot: 'This window may not copy: select the lines above and copy them.',
  openingHandout: 'Opening the handout…',
});
