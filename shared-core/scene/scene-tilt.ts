import type { Scene } from '../swim-file/swim-schema';

/** How far the picture's level leans: radians by which level drops to the right in the shown picture. */
export interface Tilt {
  readonly radians: number;
  readonly from: 'level' | 'surface' | 'assumed';
  /** Length of the line it was read from, pixels; 0 when assumed. */
  readonly linePixels: number;
}

/** Standard deviation of the tilt of a hand-held or propped camera when no level line is laid. Our default. */
export const assumedTiltSd = (2 * Math.PI) / 180;

/**
 * Tilt from the level line, else from the surface line (water is level), else none. In (−π/2, π/2]: the two ends of
 * a line may be laid in either order. A line whose ends coincide is no line.
 */
export function sceneTilt(scene: Pick<Scene, 'level' | 'surface'>): Tilt {
  for (const from of ['level', 'surface'] as const) {
    const line = scene[from];
    if (!line) continue;
    const flip = line.b.x < line.a.x ? -1 : 1;
    const dx = flip * (line.b.x - line.a.x);
    const dy = flip * (line.b.y - line.a.y);
    const linePixels = Math.hypot(dx, dy);
    if (linePixels > 0) return { radians: Math.atan2(dy, dx), from, linePixels };
  }
  return { radians: 0, from: 'assumed', linePixels: 0 };
}

/** Variance of the tilt, rad²: both ends marked with `scenePointSd` pixels across the line, or the assumed spread. */
export function tiltVariance(tilt: Tilt, scenePointSd: number): number {
  return tilt.from === 'assumed' ? assumedTiltSd ** 2 : (2 * scenePointSd ** 2) / tilt.linePixels ** 2;
}
