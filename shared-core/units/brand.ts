/**
 * Branded units and spaces. A brand costs nothing at run time; it stops a media second from being used
 * where a real second is meant, and a stage point where a picture point is meant.
 */
declare const brand: unique symbol;
export type Brand<T, Name extends string> = T & { readonly [brand]: Name };

/** Seconds of real life: media seconds divided by the clip's slowdown. */
export type Seconds = Brand<number, 'seconds'>;
/** Seconds on the clip's own clock, as its container stores them. */
export type MediaSeconds = Brand<number, 'media-seconds'>;
export type Radians = Brand<number, 'radians'>;
export type Degrees = Brand<number, 'degrees'>;

export interface Point {
  readonly x: number;
  readonly y: number;
}
/**
 * Pixels of the shown picture (after rotation, mirroring and pixel aspect): x right, y DOWN, origin at the outer
 * corner of the top left pixel, so the picture spans 0..width and 0..height.
 */
export type PicturePoint = Brand<Point, 'picture'>;
/** CSS pixels of the stage element: x right, y down. Changes with zoom and pan; never stored. */
export type StagePoint = Brand<Point, 'stage'>;
/** Pool plane: x along travel (positive the way the swimmer goes), y UP; the unit travels beside it. */
export type PoolPoint = Brand<Point, 'pool'>;

export const seconds = (value: number): Seconds => value as Seconds;
export const mediaSeconds = (value: number): MediaSeconds => value as MediaSeconds;
export const radians = (value: number): Radians => value as Radians;
export const degrees = (value: number): Degrees => value as Degrees;
export const picturePoint = (x: number, y: number): PicturePoint => ({ x, y }) as PicturePoint;
export const stagePoint = (x: number, y: number): StagePoint => ({ x, y }) as StagePoint;
export const poolPoint = (x: number, y: number): PoolPoint => ({ x, y }) as PoolPoint;
