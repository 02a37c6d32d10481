import { words } from './words';

/** Words of a comparison. */
export const comparisonWords = words({
  breathingStrokes: 'breathing strokes',
  strokesWithoutBreath: 'strokes without a breath',
});
