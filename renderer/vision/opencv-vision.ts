import type { FlowOptions, Vision, VisionPicture } from '#core/follow/vision';
import type { Point } from '#core/units/point';

/** The part of OpenCV that is used. Matrices live in its own memory: whoever makes one deletes it. */
export interface OpenCv {
  readonly Mat: new (rows?: number, cols?: number, type?: number) => OpenCvMat;
  readonly Size: new (width: number, height: number) => unknown;
  readonly TermCriteria: new (type: number, count: number, epsilon: number) => unknown;
  readonly CV_8UC1: number;
  readonly CV_32FC2: number;
  readonly TERM_CRITERIA_COUNT: number;
  readonly TERM_CRITERIA_EPS: number;
  readonly OPTFLOW_USE_INITIAL_FLOW: number;
  calcOpticalFlowPyrLK(
    before: OpenCvMat,
    after: OpenCvMat,
    points: OpenCvMat,
    found: OpenCvMat,
    status: OpenCvMat,
    error: OpenCvMat,
    window: unknown,
    levels: number,
    criteria: unknown,
    flags: number,
    leastEigenvalue: number,
  ): void;
}

interface OpenCvMat {
  readonly rows: number;
  readonly cols: number;
  readonly data: Uint8Array;
  readonly data32F: Float32Array;
  delete(): void;
}

interface OpenCvPicture extends VisionPicture {
  readonly mat: OpenCvMat;
}

/** Vision by OpenCV: pyramidal Lucas–Kanade (Bouguet 2000, as OpenCV has it). */
export function opencvVision(cv: OpenCv): Vision {
  return {
    picture(width, height): OpenCvPicture {
      const mat = new cv.Mat(height, width, cv.CV_8UC1);
      return { mat, show: (grey) => mat.data.set(grey), close: () => mat.delete() };
    },
    flow: (before, after, points, guesses, options) =>
      flow(cv, matOf(before), matOf(after), points, guesses, options),
  };
}

/** Pictures come from `picture` above; one of another vision is a bug. */
function matOf(picture: VisionPicture): OpenCvMat {
  if (!('mat' in picture)) throw new Error('a picture of another vision');
  return (picture as OpenCvPicture).mat;
}

function flow(
  cv: OpenCv,
  before: OpenCvMat,
  after: OpenCvMat,
  points: readonly Point[],
  guesses: readonly Point[],
  { window, levels }: FlowOptions,
): readonly (Point | null)[] {
  if (points.length === 0) return [];
  const from = pointsMat(cv, points);
  const to = pointsMat(cv, guesses);
  const status = new cv.Mat();
  const error = new cv.Mat();
  try {
    cv.calcOpticalFlowPyrLK(
      before,
      after,
      from,
      to,
      status,
      error,
      new cv.Size(window, window),
      levels,
      // Bouguet's usual end: 30 rounds or a hundredth of a pixel
      new cv.TermCriteria(cv.TERM_CRITERIA_COUNT + cv.TERM_CRITERIA_EPS, 30, 0.01),
      cv.OPTFLOW_USE_INITIAL_FLOW,
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

function pointsMat(cv: OpenCv, points: readonly Point[]): OpenCvMat {
  const mat = new cv.Mat(points.length, 1, cv.CV_32FC2);
  points.forEach(({ x, y }, i) => {
    mat.data32F[2 * i] = x;
    mat.data32F[2 * i + 1] = y;
  });
  return mat;
}
