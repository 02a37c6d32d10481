import { median } from '../signal/median';
import type { Point } from '../units/point';
import type { Vision, VisionPicture } from './vision';
import type { WholePicture } from './whole-picture';

/** Rows and columns of the net of points that the background is looked at in. */
export const netRows = 8;
export const netColumns = 14;
/** A point this near to the body (share of the body length) is none of the background. */
const awayShare = 0.12;
/** Fewer points of a row than this tell nothing. */
const leastPoints = 4;
/** A point that does not come back within this, pixels of the small picture, was followed onto something else. */
const backWithin = 0.5;
/** Side of the window around a point, and halvings: what moves between two looks stays within. */
const window = 25;
const levels = 3;
/** A row whose points span less than this share of the picture's width says nothing of a turn. */
const leastSpan = 0.4;
export type Move = readonly [x: number, y: number];

/** What a look at two pictures told. */
export interface Look {
  /** Row by row, pixels of the shown picture. */
  readonly rows: readonly (Move | null)[];
  /** By each row, how far the picture turned and grew. Null where it does not reach across the picture. */
  readonly turns: readonly (Turn | null)[];
}

/** Radians, and a share. */
export interface Turn {
  readonly angle: number;
  readonly growth: number;
}

/**
 * Row by row, the median way of the background's points from one picture to the other; and from how that way changes along
 * a row, where all is about as far away, how the picture turned and grew.
 */
export function rowMoves(
  vision: Vision,
  before: VisionPicture,
  after: VisionPicture,
  from: WholePicture,
  to: WholePicture,
  guess: readonly (Move | null)[],
  columns: number,
  bodyOn: (frame: number) => readonly Point[],
  bodyLength: number,
): Look {
  const { width, height, step } = from;
  before.show(from.grey);
  after.show(to.grey);
  const away = awayShare * bodyLength;
  const bodies = [bodyOn(from.frame), bodyOn(to.frame)];
  const net = Array.from({ length: netRows * columns }, (_, i) => {
    const row = Math.floor(i / columns);
    const [dx, dy] = guess[row] ?? [0, 0];
    return {
      row,
      x: (((i % columns) + 0.5) / columns) * width,
      y: ((row + 0.5) / netRows) * height,
      dx: dx / step,
      dy: dy / step,
    };
  }).filter(({ x, y, dx, dy }) =>
    bodies.every((body, k) =>
      body.every((at) => Math.hypot(at.x - step * (x + k * dx), at.y - step * (y + k * dy)) > away),
    ),
  );
  const options = { window, levels };
  const guesses = net.map(({ x, y, dx, dy }) => ({ x: x + dx, y: y + dy }));
  const there = vision.flow(before, after, net, guesses, options);
  const reached = guesses.map((guess, i) => there[i] ?? guess);
  const back = vision.flow(after, before, reached, net, options);
  const moves = Array.from({ length: netRows }, (_, row) =>
    net.flatMap((point, i) => {
      const at = there[i];
      const home = back[i];
      const isBack = at && home && Math.hypot(home.x - point.x, home.y - point.y) <= backWithin;
      return point.row === row && isBack ? [{ from: point.x, x: at.x - point.x, y: at.y - point.y }] : [];
    }),
  );
  return {
    rows: moves.map((row): Move | null =>
      row.length < leastPoints
        ? null
        : [step * median(row.map(({ x }) => x)), step * median(row.map(({ y }) => y))],
    ),
    turns: moves.map((row): Turn | null => {
      const reach = Math.max(...row.map((each) => each.from)) - Math.min(...row.map((each) => each.from));
      return row.length >= leastPoints && reach >= leastSpan * width
        ? { growth: slope(row, ({ x }) => x), angle: slope(row, ({ y }) => y) }
        : null;
    }),
  };
}

/** Median of the slopes between all pairs of a row's points (Theil 1950, Sen 1968): light over a part of a row does not count. */
function slope<T extends { readonly from: number }>(row: readonly T[], of: (each: T) => number): number {
  return median(row.flatMap((a, i) => row.slice(i + 1).map((b) => (of(b) - of(a)) / (b.from - a.from))));
}
