/** Whole pixels of the shown picture. */
export interface PicturePart {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A whole picture made small: `step` pixels of the shown picture go into one, both ways. */
export interface SmallGrey {
  readonly step: number;
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

/** Draws a whole shown picture into a rectangle of a 2D context. */
export type DrawPicture = (
  context: CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D,
  x: number,
  y: number,
  width: number,
  height: number,
) => void;
