import type { LandmarkName } from '../marks/landmark';
import type { Posture, Scene } from '../swim-file/swim-schema';
import { mirrorPosture, mirrorScene } from './mirror-swim';

/** Landmark at which one body line is laid on another. */
export const layPoints = ['hip', 'shoulder'] as const;
export type LayPoint = (typeof layPoints)[number];

/** One swim's body line of a frame, with what is needed to lay it on another. */
export interface LaidLine {
  readonly posture: Posture;
  readonly scene: Scene;
  readonly width: number;
  /** Fingertip to toe, picture pixels; null when not known. */
  readonly bodyLength: number | null;
}

export interface LaidOver {
  readonly posture: Posture;
  /** Whether both were brought to one body length; else picture pixels are taken as they are. */
  readonly scaled: boolean;
}

/**
 * The body line of `other` in the picture of `onto`: turned to swim the same way, scaled to the same body length where
 * both are known, and moved so that hips (or shoulders) meet. Never rotated: how the body lies in the water is what is
 * compared. Null when either lacks the landmark to lay it at.
 */
export function layBodyLine(other: LaidLine, onto: LaidLine, at: LayPoint): LaidOver | null {
  const opposite =
    other.scene.travel !== null && onto.scene.travel !== null && other.scene.travel !== onto.scene.travel;
  const posture = opposite ? mirrorPosture(other.posture, other.width) : other.posture;
  const from = posture.points[at];
  const to = onto.posture.points[at];
  if (!from || !to) return null;
  const known = other.bodyLength !== null && onto.bodyLength !== null && other.bodyLength > 0;
  const scale = known ? (onto.bodyLength ?? 1) / (other.bodyLength ?? 1) : 1;
  const points: Posture['points'] = {};
  for (const [name, point] of Object.entries(posture.points))
    points[name as LandmarkName] = {
      x: to.x + (point.x - from.x) * scale,
      y: to.y + (point.y - from.y) * scale,
    };
  return { posture: { ...posture, points }, scaled: known };
}

/** A line as a mirror shows it. */
export function mirrorLaid(line: LaidLine): LaidLine {
  return {
    ...line,
    posture: mirrorPosture(line.posture, line.width),
    scene: mirrorScene(line.scene, line.width),
  };
}

/**
 * Scales (screen pixels a picture pixel) at which both bodies are equally long, neither larger than its `fits`: the
 * whole picture stays in sight. Null unless both body lengths are known and positive.
 */
export function matchedScales(
  fits: readonly [number, number],
  bodyLengths: readonly [number | null, number | null],
): readonly [number, number] | null {
  const [a, b] = bodyLengths;
  if (a === null || b === null || !(a > 0) || !(b > 0)) return null;
  const shown = Math.min(fits[0] * a, fits[1] * b);
  return [shown / a, shown / b];
}
