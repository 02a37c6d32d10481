/** A whole picture made small: `step` pixels of the shown picture go into one, both ways. */
export interface SmallGrey {
  readonly step: number;
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

/** One whole picture of the film, small. All of a task have one size. */
export interface WholePicture extends SmallGrey {
  readonly frame: number;
}
