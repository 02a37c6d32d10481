/** A frame of the table that can't be decoded, or not read at the moment; `frame` says which. */
export class PictureLost extends Error {
  readonly frame: number;
  constructor(frame: number, reason: string) {
    super(`Frame ${frame} can't be shown: ${reason}`);
    this.name = 'PictureLost';
    this.frame = frame;
  }
}
