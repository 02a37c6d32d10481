import type { CameraRun } from '../swim-file/swim-schema';
import type { Point } from '../units/point';
import type { Vision } from './vision';
import type { WholePicture } from './whole-picture';
import { median } from '../signal/median';
import { type Look, type Move, netColumns, netRows, rowMoves, type Turn } from './row-moves';

/**
 * Between pictures far apart light and waves have changed, and of a plain wall few points are found again: so many times as many
 * are tried then.
 */
const denser = 4;
/** Less than this, pixels of the shown picture, is no movement of the camera. */
const stillWithin = 1.5;
/** A row that could not be told on more than this share of the looks is left out; a single one is gone on over. */
const mostLost = 0.12;
/** Where no row is so good: better a rough path, whose rows disagree and so carry a large error, than none of a camera that moved. */
const mostLostOfPlain = 0.2;

/** Fewer rows than these tell no turn. */
const leastRows = 3;
/** A picture that turned or grew by more than this, radians or share, is no standing one. */
const turnedWithin = 0.003;

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
  return looking(
    vision,
    pictures,
    bodyOn,
    bodyLength,
    (look) =>
      standing(pictures, look) ??
      moving(pictures, look, netColumns, mostLost) ??
      moving(pictures, look, denser * netColumns, mostLostOfPlain),
  );
}

/**
 * The run of a camera that stood on the pictures given, of which a few (`fewLooks`) are enough; null where it moved or too
 * little can be told.
 */
export function cameraStood(
  vision: Vision,
  pictures: readonly WholePicture[],
  bodyOn: (frame: number) => readonly Point[],
  bodyLength: number,
): CameraRun | null {
  return looking(vision, pictures, bodyOn, bodyLength, (look) => standing(pictures, look));
}

type LookFrom = (
  from: WholePicture,
  to: WholePicture,
  guess: readonly (Move | null)[],
  columns?: number,
) => Look;

/** Lends two matrices of the pictures' size to what looks at them. */
function looking(
  vision: Vision,
  pictures: readonly WholePicture[],
  bodyOn: (frame: number) => readonly Point[],
  bodyLength: number,
  job: (look: LookFrom) => CameraRun | null,
): CameraRun | null {
  const [first] = pictures;
  if (!first || pictures.length < 2) return null;
  const before = vision.picture(first.width, first.height);
  const after = vision.picture(first.width, first.height);
  try {
    return job((from, to, guess, columns = netColumns) =>
      rowMoves(vision, before, after, from, to, guess, columns, bodyOn, bodyLength),
    );
  } finally {
    before.close();
    after.close();
  }
}

/** Looks from each picture to the next and adds up. */
function moving(
  pictures: readonly WholePicture[],
  look: LookFrom,
  columns: number,
  most: number,
): CameraRun | null {
  const [first] = pictures;
  if (!first) return null;
  const { step } = first;
  const rows = Array.from({ length: netRows }, (_, row) => ((row + 0.5) / netRows) * first.height * step);
  const moved: Move[][] = rows.map(() => [[0, 0]]);
  const lost = rows.map(() => 0);
  const turned = { angle: 0, growth: 0, most: { degrees: 0, zoom: 0 }, told: 0 };
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
    const { rows: found, turns } = look(from, to, guess, columns);
    const turn = turns.filter((each) => each !== null).length < leastRows ? null : middleTurn(turns);
    if (turn) {
      turned.told += 1;
      turned.angle += turn.angle;
      turned.growth += turn.growth;
      turned.most.degrees = Math.max(turned.most.degrees, degrees(turned.angle));
      turned.most.zoom = Math.max(turned.most.zoom, Math.abs(turned.growth));
    }
    rows.forEach((_, row) => {
      const move = found[row];
      if (!move) lost[row] = (lost[row] as number) + 1;
      const [x, y] = move ?? guess[row] ?? [0, 0];
      const start = at(row, i - 1);
      moved[row]?.push([start[0] + x, start[1] + y]);
    });
  }
  const kept = rows.flatMap((_, row) => ((lost[row] as number) > most * pictures.length ? [] : [row]));
  if (kept.length === 0) return null;
  // where half of the rows are lost, or the path is a rough one, light moves those that are left too much to tell a turn
  const fine =
    most === mostLost && kept.length >= netRows / 2 && turned.told >= (1 - mostLost) * (pictures.length - 1);
  return {
    frames: pictures.map(({ frame }) => frame),
    rows: kept.map((row) => round(rows[row] as number)),
    moved: kept.map((row) => (moved[row] ?? []).map(([x, y]) => [round(x), round(y)])),
    turned: fine ? rounded(turned.most) : null,
  };
}

/** The pictures of a first look, evenly over what is looked at: enough to tell a camera that stood. */
export const fewLooks = 5;

/** Rows that must lie where they lay, on all pictures of a first look together. */
const leastStood = 6;

/**
 * The run of a camera that stood: rows lie on the pictures of the middle and the end where they lay on the first, a third of
 * those that can be told on each, and six in all. Moving light drags some along, but no moving camera leaves rows where they
 * were, unless it turns or zooms about them: that a row tells by itself. However slow, a movement adds up until the end.
 */
function standing(pictures: readonly WholePicture[], look: LookFrom): CameraRun | null {
  const unmoved: readonly Move[] = Array.from({ length: netRows }, () => [0, 0]);
  const [first] = pictures;
  const last = pictures.at(-1);
  if (!first || !last) return null;
  const most = { degrees: 0, zoom: 0 };
  let stood = 0;
  let told = 0;
  for (const share of [0.25, 0.5, 0.75, 1]) {
    const to = pictures[Math.round(share * (pictures.length - 1))];
    if (!to) return null;
    const { rows, turns } = look(first, to, unmoved, denser * netColumns);
    const still = rows.map((move) => move !== null && Math.hypot(move[0], move[1]) < stillWithin);
    const count = still.filter((each) => each).length;
    if (count === 0 || count < rows.filter((move) => move !== null).length / 3) return null;
    stood += count;
    const turn = middleTurn(turns.filter((_, row) => still[row]));
    if (!turn) continue;
    if (Math.max(Math.abs(turn.angle), Math.abs(turn.growth)) > turnedWithin) return null;
    told += 1;
    most.degrees = Math.max(most.degrees, degrees(turn.angle));
    most.zoom = Math.max(most.zoom, Math.abs(turn.growth));
  }
  if (stood < leastStood) return null;
  return { frames: [first.frame, last.frame], rows: [], moved: [], turned: told > 0 ? rounded(most) : null };
}

/** What rows say together; null of none. */
function middleTurn(turns: readonly (Turn | null)[]): Turn | null {
  const known = turns.filter((turn) => turn !== null);
  if (known.length === 0) return null;
  return {
    angle: median(known.map(({ angle }) => angle)),
    growth: median(known.map(({ growth }) => growth)),
  };
}

const degrees = (radians: number): number => (Math.abs(radians) * 180) / Math.PI;
const rounded = ({ degrees: turn, zoom }: { degrees: number; zoom: number }) => ({
  degrees: Math.round(1000 * turn) / 1000,
  zoom: Math.round(1e5 * zoom) / 1e5,
});
/** A hundredth of a pixel, as followed points are kept. */
const round = (value: number): number => Math.round(100 * value) / 100;
