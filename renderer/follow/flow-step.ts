import type { Point } from '#core/units/brand';
import type { Vision, VisionMat } from './vision';

export interface FlowOptions {
  /** Side of the square looked at around each point, pixels, odd. */
  readonly window: number;
  /** Halvings of the picture above the full one. */
  readonly levels: number;
}

/** Where each point went; null where it could not be told. */
export type Flow = readonly (Point | null)[];

/**
 * Pyramidal Lucas–Kanade (Bouguet 2000, as OpenCV has it) from one picture to another of the same size. Points and
 * guesses in pixels of these pictures, pixel centres at whole numbers. `guesses` are where the points may be now.
 */
export function flowStep(
  vision: Vision,
  before: VisionMat,
  after: VisionMat,
  points: readonly Point[],
  guesses: readonly Point[],
  { window, levels }: FlowOptions,
): Flow {
  if (points.length === 0) return [];
  const from = pointsMat(vision, points);
  const to = pointsMat(vision, guesses);
  const status = new vision.Mat();
  const error = new vision.Mat();
  try {
    vision.calcOpticalFlowPyrLK(
      before,
      after,
      from,
      to,
      status,
      error,
      new vision.Size(window, window),
      levels,
      // Bouguet's usual end: 30 rounds or a hundredth of a pixel
      new vision.TermCriteria(vision.TERM_CRITERIA_COUNT + vision.TERM_CRITERIA_EPS, 30, 0.01),
      vision.OPTFLOW_USE_INITIAL_FLOW,
      1e-4,
    );
    return points.map((_, i) => {
      const x = to.data32F[2 * i] ?? Number.NaN;
      const y = to.data32F[2 * i + 1] ?? Number.NaN;
      const inside = x >= 0 && y >= 0 && x <= after.cols - 1 && y <= after.rows - 1;
      return status.data[i] === 1 && inside ? { x, y } : null;
    });
  } finally {
    for (const mat of [from, to, status, error]) mat.delete();
  }
}

function pointsMat(vision: Vision, points: readonly Point[]): VisionMat {
  const mat = new vision.Mat(points.length, 1, vision.CV_32FC2);
  points.forEach(({ x, y }, i) => {
    mat.data32F[2 * i] = x;
    mat.data32F[2 * i + 1] = y;
  });
  return mat;
}
