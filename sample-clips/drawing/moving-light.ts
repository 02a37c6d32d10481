/** Bright net that waves throw on what lies under water, 0 to about 1, at a place (metres) and a real time. Our own. */
export function movingLight(x: number, z: number, time: number): number {
  const u = x + 0.22 * Math.sin(2.3 * z + 0.9 * time) + 0.1 * Math.sin(5.1 * z - 1.3 * time);
  const v = z + 0.22 * Math.sin(2.1 * x - 0.8 * time + 1) + 0.1 * Math.sin(4.7 * x + 1.1 * time);
  const a = Math.abs(Math.sin(3.4 * u + 0.8 * Math.sin(2.6 * v + time)));
  const b = Math.abs(Math.sin(3.9 * v + 0.9 * Math.sin(2.9 * u - 0.8 * time) + 0.7));
  const c = Math.abs(Math.sin(2.6 * (u + v) + 0.9 * Math.sin(2.2 * (u - v) + 0.6 * time)));
  const near = Math.min(a, b, c);
  const bright = 1 - Math.min(1, near * 1.25);
  return bright ** 4;
}

/** Soft shafts of light under the surface, 0 to 1: `across` is metres along the pool at the surface end of the shaft. */
export function lightShaft(across: number, time: number): number {
  const a = 0.5 + 0.5 * Math.sin(1.9 * across + 0.35 * time + 0.8 * Math.sin(0.7 * across - 0.2 * time));
  const b = 0.5 + 0.5 * Math.sin(4.3 * across - 0.5 * time + 1.3 * Math.sin(1.1 * across + 0.3 * time));
  const c = 0.5 + 0.5 * Math.sin(9.7 * across + 0.8 * time + 2);
  return a * a * (0.45 + 0.55 * b) * (0.6 + 0.4 * c);
}
