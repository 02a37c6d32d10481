/** A frame of the table that can't be shown; `frame` says which. */
export class PictureLost extends Error {
  readonly frame: number;
  /** The file itself could not be read: it may be gone, and other frames with it. Else only this frame is damaged. */
  readonly unreadable: boolean;
  constructor(frame: number, reason: string, unreadable = false) {
    super(`Frame ${frame} can't be shown: ${reason}`);
    this.name = 'PictureLost';
    this.frame = frame;
    this.unreadable = unreadable;
  }
}
