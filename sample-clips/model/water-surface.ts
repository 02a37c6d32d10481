/**
 * Height of the drawn surface over the still one, metres, at a place along the pool and a real time: three small
 * ripples, 9 mm at most together.
 */
export function waterSurface(x: number, time: number): number {
  return (
    0.0045 * Math.sin(3.1 * x - 2.4 * time) +
    0.003 * Math.sin(7.3 * x + 3.7 * time + 1.1) +
    0.0015 * Math.sin(17 * x - 5.2 * time + 0.4)
  );
}
