import type { Point } from '../units/point';

/** Room for one grey picture where the vision reads it. Whoever asked for it closes it. */
export interface VisionPicture {
  /** Puts a picture there: brightness row by row, width × height values. */
  show(grey: Uint8Array): void;
  close(): void;
}

export interface FlowOptions {
  /** Side of the square looked at around each point, pixels, odd. */
  readonly window: number;
  /** Halvings of the picture above the full one. */
  readonly levels: number;
}

/** Where each point went; null where that can't be told. */
type Flow = readonly (Point | null)[];

/** What following needs of a library that sees: how points moved from one picture to another. */
export interface Vision {
  picture(width: number, height: number): VisionPicture;
  /**
   * Where points of one picture lie in another of the same size. Points and guesses in pixels of these pictures, pixel
   * centres at whole numbers; `guesses` are where the points may be now.
   */
  flow(
    before: VisionPicture,
    after: VisionPicture,
    points: readonly Point[],
    guesses: readonly Point[],
    options: FlowOptions,
  ): Flow;
}
