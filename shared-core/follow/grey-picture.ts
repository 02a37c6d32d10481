import type { Point } from '../units/point';

/** The grey part of one frame's picture around the swimmer. Its first pixel lies at (x, y) of the shown picture. */
export interface GreyPicture {
  readonly frame: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

type Corner = Pick<GreyPicture, 'x' | 'y'>;

/** A place of the shown picture in the part's own pixels, whose centres lie at whole numbers. */
export const ownPlace = (corner: Corner, { x, y }: Point): Point => ({
  x: x - corner.x - 0.5,
  y: y - corner.y - 0.5,
});

/** A place in the part's own pixels as it lies in the shown picture: inverse of `ownPlace`. */
export const shownPlace = (corner: Corner, { x, y }: Point): Point => ({
  x: x + corner.x + 0.5,
  y: y + corner.y + 0.5,
});
