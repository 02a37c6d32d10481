import { words } from './words';

/** Saving one picture. */
export const stillWords = words({
  notSaved: 'Not saved. {what} {todo}',
  frameCantDecoded: 'This frame can’t be decoded, so there is no still of it.',
  pictureTooLarge: 'The picture is too large to be saved as PNG on this machine.',
  frame: 'frame {frame}',
  stillFrame: 'Still of frame {frame}',
  close: 'Close',
  stillWillSaved: 'The still as it will be saved',
  thereNoPicture: 'There is no picture: the clip is not here.',
  savedDownloadCopy: 'Saved: <b>{path}</b> <a>Download a copy</a>',
  saving: 'Saving…',
  savePng: 'Save PNG',
  readings: 'Readings on it, {chosen} of {mostStillReadings}',
  noReadingCan: 'No reading can be computed yet.',
});
