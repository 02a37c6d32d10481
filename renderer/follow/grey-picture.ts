/** The grey part of one frame's picture around the swimmer. Its first pixel lies at (x, y) of the shown picture. */
export interface GreyPicture {
  readonly frame: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}
