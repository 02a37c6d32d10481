import type { Point } from '#core/units/point';

/** A shank and a foot, light on dark, drawn by distance from their bones; the reading code has no part in it. */
export function drawLeg(knee: Point, ankle: Point, toe: Point): Uint8Array {
  const [width, height] = [240, 160];
  const grey = new Uint8Array(width * height);
  const bone = (a: Point, b: Point, x: number, y: number): number => {
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    const t = Math.max(0, Math.min(1, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy)));
    return Math.hypot(x - a.x - t * dx, y - a.y - t * dy);
  };
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const far = Math.min(bone(knee, ankle, x, y) - 3, bone(ankle, toe, x, y));
      grey[y * width + x] = Math.round(
        50 + 130 / (1 + Math.exp((far - 4) / 0.8)) + 8 * Math.sin(x / 9 + y / 13),
      );
    }
  return grey;
}

export const leg = { knee: { x: 150, y: 80 }, ankle: { x: 90, y: 86 }, toe: { x: 58, y: 78 } };
/** Fingertip to toe of the body the leg would belong to, pixels. */
export const bodyLength = 330;
export const turned = (about: Point, point: Point, angle: number): Point => ({
  x: about.x + Math.cos(angle) * (point.x - about.x) - Math.sin(angle) * (point.y - about.y),
  y: about.y + Math.sin(angle) * (point.x - about.x) + Math.cos(angle) * (point.y - about.y),
});
