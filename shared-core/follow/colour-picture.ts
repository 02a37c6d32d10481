/** The packed colours of one frame's picture around the swimmer. Its first pixel lies at (x, y) of the shown picture. */
export interface ColourPicture {
  readonly frame: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly colours: Uint16Array;
}
