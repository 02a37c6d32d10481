import { median } from '../signal/median';
import type { Vision, VisionPicture } from './vision';
import type { GreyLevel } from './grey-pyramid';
import type { LandmarkName } from '../marks/landmark';
import type { Point } from '../units/point';
import type { GreyPicture } from './grey-picture';

export type BodyPlaces = ReadonlyMap<LandmarkName, Point>;

export interface FlowedPoint {
  readonly at: Point;
  /** Distance, px, between its start and where it comes to when it is followed back. */
  readonly backError: number;
}

/** Holds the last two pictures and tells how points moved between them. */
export interface FlowTeller {
  /** The next picture: the one before it is kept. */
  show(pyramid: readonly GreyLevel[]): void;
  tell(
    from: GreyPicture,
    to: GreyPicture,
    places: BodyPlaces,
    guesses: BodyPlaces,
  ): ReadonlyMap<LandmarkName, FlowedPoint>;
  /** How far what lies behind the swimmer moved, px: what the camera did. Null when too little of it can be told. */
  background(from: GreyPicture, to: GreyPicture, places: BodyPlaces): Point | null;
  close(): void;
}

/** Side of the window, share of the body length; levels above the picture flow is told on. */
const windowShare = 0.045;
const levels = 3;
/** Flow is told on pictures of a body about this long, pixels: it only says where to begin, and costs by the pixel. */
const flowLength = 200;
/** Background is looked at on a grid of so many points across and down, this far (share of the body length) from the body. */
const gridAcross = 8;
const gridDown = 5;
const awayShare = 0.09;
/** Fewer points than these are no background. */
const leastBackground = 8;
/** Flow that does not come back within this share of the body length is flow of something else. */
const lostShare = 0.03;

export function createFlowTeller(
  vision: Vision,
  first: readonly GreyLevel[] | undefined,
  bodyLength: number,
  longest = flowLength,
): FlowTeller {
  const level = bodyLength > longest ? (bodyLength > 2 * longest ? 2 : 1) : 0;
  const size = first?.[level] ?? first?.[0];
  const make = (): VisionPicture => vision.picture(size?.width ?? 1, size?.height ?? 1);
  let before = make();
  let after = make();
  const scale = 2 ** level;
  const window = 2 * Math.round((windowShare * bodyLength) / scale / 2) + 1;
  const shrink = (point: Point, picture: GreyPicture): Point => ({
    x: (point.x - picture.x) / scale - 0.5,
    y: (point.y - picture.y) / scale - 0.5,
  });
  return {
    show(pyramid) {
      [before, after] = [after, before];
      const shown = pyramid[level] ?? pyramid[0];
      if (shown) after.show(shown.grey);
    },
    tell(from, to, places, guesses) {
      const names = [...places.keys()];
      const starts = [...places.values()].map((place) => shrink(place, from));
      const guessed = [...places].map(([name, place]) => shrink(guesses.get(name) ?? place, to));
      const there = vision.flow(before, after, starts, guessed, { window, levels });
      const reached = guessed.map((guess, k) => there[k] ?? guess);
      const back = vision.flow(after, before, reached, starts, { window, levels });
      const flows = new Map<LandmarkName, FlowedPoint>();
      names.forEach((name, k) => {
        const found = there[k];
        const returned = back[k];
        const start = starts[k];
        if (!found || !returned || !start) return;
        const backError = scale * Math.hypot(returned.x - start.x, returned.y - start.y);
        if (backError > lostShare * bodyLength) return;
        flows.set(name, {
          at: { x: (found.x + 0.5) * scale + to.x, y: (found.y + 0.5) * scale + to.y },
          backError,
        });
      });
      return flows;
    },
    background(from, to, places) {
      const body = [...places.values()];
      const points: Point[] = [];
      for (let row = 0; row < gridDown; row++)
        for (let column = 0; column < gridAcross; column++) {
          const x = from.x + ((column + 0.5) / gridAcross) * from.width;
          const y = from.y + ((row + 0.5) / gridDown) * from.height;
          const near = body.some((at) => Math.hypot(at.x - x, at.y - y) < awayShare * bodyLength);
          if (!near) points.push({ x, y });
        }
      const starts = points.map((point) => shrink(point, from));
      const guesses = points.map((point) => shrink(point, to));
      const found = vision.flow(before, after, starts, guesses, { window, levels: 2 });
      const moves = found.flatMap((at, k) => {
        const point = points[k];
        return at && point
          ? [{ x: (at.x + 0.5) * scale + to.x - point.x, y: (at.y + 0.5) * scale + to.y - point.y }]
          : [];
      });
      if (moves.length < leastBackground) return null;
      return { x: median(moves.map(({ x }) => x)), y: median(moves.map(({ y }) => y)) };
    },
    close() {
      before.close();
      after.close();
    },
  };
}
