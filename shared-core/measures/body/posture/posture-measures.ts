import { depthMeasures } from './depth-measures';
import { jointMeasures } from './joint-measures';
import { lineMeasures } from './line-measures';
import type { PostureMeasure } from './posture-measure';

/** Everything read off single postures, in the order of the catalogue. */
export const postureMeasures: readonly PostureMeasure[] = [
  ...jointMeasures,
  ...lineMeasures,
  ...depthMeasures,
];
