/** The part of OpenCV that following uses. Matrices live in its own memory: whoever makes one deletes it. */
export interface Vision {
  readonly Mat: new (rows?: number, cols?: number, type?: number) => VisionMat;
  readonly Size: new (width: number, height: number) => VisionSize;
  readonly TermCriteria: new (type: number, count: number, epsilon: number) => unknown;
  readonly Scalar: new (...values: number[]) => unknown;
  readonly CV_8UC1: number;
  readonly CV_32FC2: number;
  readonly CV_64FC1: number;
  readonly TERM_CRITERIA_COUNT: number;
  readonly TERM_CRITERIA_EPS: number;
  readonly OPTFLOW_USE_INITIAL_FLOW: number;
  readonly INTER_LINEAR: number;
  readonly BORDER_REPLICATE: number;
  readonly WARP_INVERSE_MAP: number;
  calcOpticalFlowPyrLK(
    before: VisionMat,
    after: VisionMat,
    points: VisionMat,
    found: VisionMat,
    status: VisionMat,
    error: VisionMat,
    window: VisionSize,
    levels: number,
    criteria: unknown,
    flags: number,
    leastEigenvalue: number,
  ): void;
  warpAffine(
    from: VisionMat,
    to: VisionMat,
    transform: VisionMat,
    size: VisionSize,
    flags: number,
    border: number,
    value: unknown,
  ): void;
}

export interface VisionSize {
  readonly width: number;
  readonly height: number;
}

export interface VisionMat {
  readonly rows: number;
  readonly cols: number;
  readonly data: Uint8Array;
  readonly data32F: Float32Array;
  readonly data64F: Float64Array;
  delete(): void;
}
