import type { Point } from '../units/point';

/** A line along the outside of a shape. */
export interface Edge {
  readonly colour: string;
  readonly width: number;
}

/**
 * One thing drawn: plain data in pixels of whatever it is drawn on, x right, y down, in order from the back to the front.
 * The window and the host paint the same list, so that what is seen is what is saved.
 */
export type DrawingOp =
  | {
      readonly op: 'line';
      readonly points: readonly Point[];
      readonly colour: string;
      readonly width: number;
      /** Lengths of dashes and gaps; none: solid. */
      readonly dash?: readonly number[];
      readonly cap?: 'round' | 'butt';
      /** 0 to 1; 1 when left out. */
      readonly opacity?: number;
    }
  | {
      readonly op: 'area';
      readonly points: readonly Point[];
      readonly fill: string;
      readonly edge?: Edge;
      readonly opacity?: number;
    }
  | {
      readonly op: 'disc';
      readonly at: Point;
      readonly radius: number;
      readonly fill: string | null;
      readonly edge?: Edge;
      readonly opacity?: number;
    }
  | {
      /** Letters as shapes: where one contour lies in another, what it encloses the other way round is left out. */
      readonly op: 'outline';
      /** What the shapes say. */
      readonly words: string;
      readonly contours: readonly (readonly Point[])[];
      readonly fill: string;
      readonly edge?: Edge;
    }
  | {
      readonly op: 'words';
      readonly words: string;
      /** Left, middle or right end of the base line, as `align` says. */
      readonly at: Point;
      readonly size: number;
      readonly weight: 400 | 600;
      readonly colour: string;
      /** Colour of the edge round every letter; null: none. */
      readonly casing: string | null;
      readonly align?: 'left' | 'centre' | 'right';
    };

/** Width of words in pixels: whoever paints knows its letters. */
export type MeasureWords = (words: string, size: number, weight: 400 | 600) => number;
