import { words } from './words';

/** Keeping the swimmer in view, on stages and in what is exported. */
export const keepInViewWords = words({
  button: 'Keep in view',
  back: 'Back to swimmer',
  tip: 'Zoom and move the picture with the swimmer',
  backTip: 'Back to the swimmer',
  command: 'Keep the swimmer in view',
  wholeCommand: 'Whole picture; back to the swimmer where it is kept in view',
  unknown: 'Lay a body line or see the swimmer first. Until then you see the whole picture.',
  choice: 'Keep the swimmer in view',
});
