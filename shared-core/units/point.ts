/**
 * Two numbers in one of three planes; names and docs of signatures tell which.
 *
 * - In the picture: pixels of the shown picture (after rotation, mirroring and pixel aspect), x right, y DOWN, origin at the
 *   outer corner of the top left pixel, so the picture spans 0..width and 0..height.
 * - On the stage: CSS pixels of the stage element, x right, y down. Changes with zoom and pan; never stored.
 * - In the pool: x along travel (positive the way the swimmer goes), y UP; the unit travels beside it.
 */
export interface Point {
  readonly x: number;
  readonly y: number;
}
