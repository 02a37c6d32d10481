/** Frames one after another, both ends included. */
export interface FrameRange {
  readonly first: number;
  readonly last: number;
}
