/** The nine points of a body line, fingertip to toe, in the order they are laid. */
export const landmarkNames = [
  'fingertip',
  'wrist',
  'elbow',
  'shoulder',
  'ear',
  'hip',
  'knee',
  'ankle',
  'toe',
] as const;
export type LandmarkName = (typeof landmarkNames)[number];

/**
 * Landmarks joined by the drawn body line. The ear hangs off it: the head is measured against the line of the
 * arms, not as a link of the chain.
 */
export const bodyChain: readonly LandmarkName[] = [
  'fingertip',
  'wrist',
  'elbow',
  'shoulder',
  'hip',
  'knee',
  'ankle',
  'toe',
];
