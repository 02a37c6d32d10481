/** Refractive index of water for visible light. Common value; from memory. */
const waterIndex = 1.333;

/**
 * Field of view under water of a camera behind a flat port, radians: 2 asin(sin(half angle in air) / 1.333).
 *
 * @param fieldOfViewInAir radians, in 0..π
 * @see Snell's law at the middle of the port
 */
export function flatPortFieldOfView(fieldOfViewInAir: number): number {
  return 2 * Math.asin(Math.sin(fieldOfViewInAir / 2) / waterIndex);
}
