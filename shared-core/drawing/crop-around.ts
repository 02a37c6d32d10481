import type { Point } from '../units/brand';
import type { Rect } from './composition';

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Room left round the points, as a share of their extent; our default. */
const roomShare = 0.14;
/** A crop is never smaller than this share of the picture's width: below it film is only blocks. Our default. */
const leastShare = 0.3;

/**
 * The part of a picture with a given aspect (width over height) that holds all points with some room; within the
 * picture, so that on narrow pictures or with points outside not all may fit. Without points the middle, as large as it
 * goes.
 */
export function cropAround(points: readonly Point[], picture: Size, aspect: number): Rect {
  const greatest = Math.min(picture.width, picture.height * aspect);
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const extent = (values: readonly number[]): number =>
    values.length === 0 ? Number.POSITIVE_INFINITY : Math.max(...values) - Math.min(...values);
  const middle = (values: readonly number[], whole: number): number =>
    values.length === 0 ? whole / 2 : (Math.max(...values) + Math.min(...values)) / 2;
  const wanted = Math.max(extent(xs), extent(ys) * aspect) * (1 + 2 * roomShare);
  const width = Math.min(greatest, Math.max(wanted, picture.width * leastShare));
  const height = width / aspect;
  const held = (at: number, size: number, whole: number): number =>
    Math.max(0, Math.min(whole - size, at - size / 2));
  return {
    x: held(middle(xs, picture.width), width, picture.width),
    y: held(middle(ys, picture.height), height, picture.height),
    width,
    height,
  };
}
