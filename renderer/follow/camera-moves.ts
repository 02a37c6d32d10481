import type { CameraRun } from '#core/swim-file/swim-schema';
import type { Point } from '#core/units/brand';
import type { SmallGrey } from '../video/small-grey';
import { flowStep } from './flow-step';
import type { Vision, VisionMat } from './vision';

/** One whole picture of the film, small. All of a task have one size. */
export interface WholePicture extends SmallGrey {
  readonly frame: number;
}

/** Rows and columns of the net of points that the background is looked at in. */
const netRows = 8;
const netColumns = 14;
/** A point this near to the body (share of the body length) is none of the background. */
const awayShare = 0.12;
/** Fewer points of a row than this tell nothing. */
const leastPoints = 4;
/** A point that does not come back within this, pixels of the small picture, was followed onto something else. */
const backWithin = 0.5;
/** Side of the window around a point, and halvings: what moves between two looks stays within. */
const window = 25;
const levels = 3;
/** Less than this, pixels of the shown picture, is no movement of the camera. */
const stillWithin = 1.5;
/** A row that could not be told on more than this share of the looks is left out; a single one is gone on over. */
const mostLost = 0.12;

type Move = readonly [x: number, y: number];

/**
 * How what lies behind the swimmer moved, row by row of the picture: rows are kept apart, as light runs over the floor and
 * waves along the surface, and near things move by more than far ones when a camera is carried. Which row to trust is
 * told later, from how they agree (`cameraPath`). Null where too little of the background can be told.
 *
 * @param bodyOn where the swimmer's landmarks are on a frame, pixels of the shown picture
 */
export function cameraMoves(
  vision: Vision,
  pictures: readonly WholePicture[],
  bodyOn: (frame: number) => readonly Point[],
  bodyLength: number,
): CameraRun | null {
  const first = pictures[0];
  const last = pictures.at(-1);
  if (!first || !last || pictures.length < 2) return null;
  const { step } = first;
  const rows = Array.from({ length: netRows }, (_, row) => ((row + 0.5) / netRows) * first.height * step);
  const mats = [first, first].map(({ height, width }) => new vision.Mat(height, width, vision.CV_8UC1));
  const [before, after] = mats;
  try {
    if (!before || !after) return null;
    const look = (from: WholePicture, to: WholePicture, guess: readonly (Move | null)[]) =>
      rowMoves(vision, before, after, from, to, guess, bodyOn, bodyLength);
    const none: readonly (Move | null)[] = rows.map(() => [0, 0]);
    if (standsStill(pictures, (from, to) => look(from, to, none)))
      return { frames: [first.frame, last.frame], rows: [], moved: [] };
    const moved: Move[][] = rows.map(() => [[0, 0]]);
    const lost = rows.map(() => 0);
    for (let i = 1; i < pictures.length; i++) {
      const from = pictures[i - 1];
      const to = pictures[i];
      if (!from || !to) break;
      const at = (row: number, place: number): Move => moved[row]?.[place] ?? [0, 0];
      // on as before
      const guess = rows.map((_, row): Move => {
        const now = at(row, i - 1);
        const past = at(row, Math.max(0, i - 2));
        return [now[0] - past[0], now[1] - past[1]];
      });
      const found = look(from, to, guess);
      rows.forEach((_, row) => {
        const move = found[row];
        if (!move) lost[row] = (lost[row] ?? 0) + 1;
        const [x, y] = move ?? guess[row] ?? [0, 0];
        const start = at(row, i - 1);
        moved[row]?.push([start[0] + x, start[1] + y]);
      });
    }
    const kept = rows.flatMap((_, row) => ((lost[row] ?? 0) > mostLost * pictures.length ? [] : [row]));
    if (kept.length === 0) return null;
    return {
      frames: pictures.map(({ frame }) => frame),
      rows: kept.map((row) => round(rows[row] ?? 0)),
      moved: kept.map((row) => (moved[row] ?? []).map(([x, y]) => [round(x), round(y)])),
    };
  } finally {
    for (const mat of mats) mat.delete();
  }
}

/**
 * Whether rows lie on the pictures of the middle and the end where they lay on the first: two of them, and a third of
 * those that can be told. Moving light drags some along, but no moving camera leaves two where they were.
 */
function standsStill(
  pictures: readonly WholePicture[],
  look: (from: WholePicture, to: WholePicture) => readonly (Move | null)[],
): boolean {
  const [first] = pictures;
  return [0.25, 0.5, 0.75, 1].every((share) => {
    const to = pictures[Math.round(share * (pictures.length - 1))];
    if (!first || !to) return false;
    const told = look(first, to).flatMap((move) => (move ? [Math.hypot(move[0], move[1])] : []));
    return told.filter((moved) => moved < stillWithin).length >= Math.max(2, told.length / 3);
  });
}

/** Row by row, the median way of the background's points from one picture to the other, pixels of the shown picture. */
function rowMoves(
  vision: Vision,
  before: VisionMat,
  after: VisionMat,
  from: WholePicture,
  to: WholePicture,
  guess: readonly (Move | null)[],
  bodyOn: (frame: number) => readonly Point[],
  bodyLength: number,
): readonly (Move | null)[] {
  const { width, height, step } = from;
  before.data.set(from.grey);
  after.data.set(to.grey);
  const away = awayShare * bodyLength;
  const bodies = [bodyOn(from.frame), bodyOn(to.frame)];
  const net = Array.from({ length: netRows * netColumns }, (_, i) => {
    const row = Math.floor(i / netColumns);
    const [dx, dy] = guess[row] ?? [0, 0];
    return {
      row,
      x: (((i % netColumns) + 0.5) / netColumns) * width,
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
  const there = flowStep(vision, before, after, net, guesses, options);
  const reached = there.map((at, i) => at ?? guesses[i] ?? { x: 0, y: 0 });
  const back = flowStep(vision, after, before, reached, net, options);
  return Array.from({ length: netRows }, (_, row): Move | null => {
    const moves = net.flatMap((point, i) => {
      const at = there[i];
      const home = back[i];
      const isBack = at && home && Math.hypot(home.x - point.x, home.y - point.y) <= backWithin;
      return point.row === row && isBack ? [{ x: at.x - point.x, y: at.y - point.y }] : [];
    });
    if (moves.length < leastPoints) return null;
    return [step * median(moves.map(({ x }) => x)), step * median(moves.map(({ y }) => y))];
  });
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;
/** A hundredth of a pixel, as followed points are kept. */
const round = (value: number): number => Math.round(100 * value) / 100;
