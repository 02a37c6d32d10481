import type { Scene } from '../swim-file/swim-schema';

/**
 * Relative variances of a scene's scale, by cause. A length measured with the scale has relative variance
 * `shared + own`, whatever its size.
 */
export interface ScaleUncertainty {
  /** Marking of the two ends of the known length. */
  readonly endPoints: number;
  /** The known length itself. */
  readonly length: number;
  /** The swimmer nearer to or farther from the camera than the known length. */
  readonly offPlane: number;
  /** Same in every swim filmed and scaled with one set-up: ends and length. */
  readonly shared: number;
  /** This swim's own: where in the lane the swimmer was. */
  readonly own: number;
}

/** Standard deviation of how much nearer or farther than the scale's plane a swimmer is: 6 cm. Our default. */
export const offPlaneMetres = 0.06;

/** The same as a share of lengths, where the camera's distance is not known: 6 cm at 6 m. Our default. */
const offPlaneRelativeSd = 0.01;

/**
 * Scale uncertainty of a scene; null without a scale or with coinciding ends.
 *
 * @param scenePointSd standard deviation of a line end along the line, pixels
 */
export function scaleUncertainty(
  scene: Pick<Scene, 'scale'>,
  scenePointSd: number,
  offPlaneSd = offPlaneRelativeSd,
): ScaleUncertainty | null {
  if (!scene.scale) return null;
  const { line, metres, metresSd } = scene.scale;
  const pixels = Math.hypot(line.b.x - line.a.x, line.b.y - line.a.y);
  if (!(pixels > 0)) return null;
  const endPoints = (2 * scenePointSd ** 2) / pixels ** 2;
  const length = (metresSd / metres) ** 2;
  const offPlane = offPlaneSd ** 2;
  return { endPoints, length, offPlane, shared: endPoints + length, own: offPlane };
}
