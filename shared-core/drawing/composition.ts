import type { Point } from '../units/point';
import type { DrawingOp } from './drawing-op';

export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** One film picture of a composition: which, what part of it, and where it goes. */
export interface PlacedPicture {
  /** Which of the swims the composition was made of, from 0. */
  readonly swim: number;
  readonly frame: number;
  /** Part of the shown picture, in its pixels. */
  readonly crop: Rect;
  readonly at: Rect;
}

/**
 * Something to be saved or printed, whole: its size, its ground, the film pictures on it and what lies over them. Plain
 * data, made here once; window, host and PDF only carry it out.
 */
export interface Composition {
  readonly width: number;
  readonly height: number;
  readonly ground: string;
  readonly pictures: readonly PlacedPicture[];
  readonly over: readonly DrawingOp[];
}

/** Where a point of the picture comes to lie when `crop` of it is shown in `at`. */
export function placePoint({ crop, at }: Pick<PlacedPicture, 'crop' | 'at'>, point: Point): Point {
  return {
    x: at.x + ((point.x - crop.x) * at.width) / crop.width,
    y: at.y + ((point.y - crop.y) * at.height) / crop.height,
  };
}

export const rectangle = ({ x, y, width, height }: Rect): readonly Point[] => [
  { x, y },
  { x: x + width, y },
  { x: x + width, y: y + height },
  { x, y: y + height },
];
