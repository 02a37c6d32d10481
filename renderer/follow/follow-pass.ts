import { alignBody, type Expected } from '#core/follow/align-body';
import type { Sighting } from '#core/follow/blend-sightings';
import type { GreyLevel } from '#core/follow/grey-pyramid';
import type { LandmarkName } from '#core/marks/landmark';
import type { Point } from '#core/units/brand';
import { flowStep } from './flow-step';
import type { GreyPicture } from './grey-picture';
import type { Piece } from './piece';
import type { Vision, VisionMat } from './vision';

export type Sightings = ReadonlyMap<LandmarkName, Sighting>;

/** Side of the flow's window, share of the body length; levels above the half-size picture flow is told on. */
const flowWindow = 0.045;
const flowLevels = 3;
/** Flow is told on pictures of half the size: it only says where to begin. */
const flowLevel = 1;
/** Flow beside a thin fast limb is often the background's: going on as before counts more. Set on the sample clips. */
const flowShare = 0.25;

/**
 * Follows the body through the pictures one way. From frame to frame, flow says where each landmark went; then all
 * limbs together are laid so that they look as they did where they were marked, so that nothing drifts. On a frame
 * where a landmark is marked it is where the coach put it.
 */
export function followPass(
  vision: Vision,
  piece: Piece,
  pyramids: readonly (readonly GreyLevel[])[],
  way: 1 | -1,
  tick: () => void,
): readonly Sightings[] {
  const { pictures, bodyLength } = piece;
  const seen = new Array<Sightings>(pictures.length).fill(new Map());
  const begin = way > 0 ? 0 : pictures.length - 1;
  let held = new Map<LandmarkName, Held>();
  let before = flowMat(vision, pyramids[begin]);
  let after = flowMat(vision, pyramids[begin]);
  try {
    for (let i = begin; i >= 0 && i < pictures.length; i += way) {
      const picture = pictures[i];
      const pyramid = pyramids[i];
      if (!picture || !pyramid) break;
      const last = pictures[i - way];
      fill(after, pyramid);
      const flows = last ? tellFlow(vision, before, after, last, picture, held, bodyLength) : new Map();
      const expected = new Map<LandmarkName, Expected>();
      for (const name of piece.landmarksOn(i)) {
        const mark = piece.mark(i, name);
        const flow = flows.get(name);
        const from = held.get(name);
        if (mark) expected.set(name, { at: inCrop(mark, picture), sd: markedSd });
        else if (from) {
          const onward = { x: from.at.x + from.step.x, y: from.at.y + from.step.y };
          const guess = flow
            ? between(onward, flow.at, flowShare * flowTrust(flow.backError, from.freedom))
            : onward;
          expected.set(name, { at: inCrop(guess, picture), sd: from.freedom });
        }
      }
      const aligned = alignBody(pyramid, piece.templatesFor(i), expected, piece.lengthsOn(i));
      const next = new Map<LandmarkName, Held>();
      const here = new Map<LandmarkName, Sighting>();
      for (const [name, point] of aligned.points) {
        const at = { x: point.x + picture.x + 0.5, y: point.y + picture.y + 0.5 };
        next.set(name, goOn(piece, i, way, name, at, held.get(name)));
        let residual = 0;
        for (const [limb, value] of aligned.residuals)
          if (limb.from === name || limb.to === name) residual = Math.max(residual, value);
        here.set(name, {
          at: piece.mark(i, name) ?? at,
          variance: aligned.variances.get(name) ?? Infinity,
          residual,
          backError: flows.get(name)?.backError ?? null,
        });
      }
      seen[i] = here;
      held = next;
      [before, after] = [after, before];
      tick();
    }
  } finally {
    before.delete();
    after.delete();
  }
  return seen;
}

/** A landmark on the picture last looked at: its place, its last step, and how far the next step may differ. */
interface Held {
  readonly at: Point;
  readonly step: Point;
  readonly freedom: number;
}

/** A landmark's state after a picture. From a mark that was not met, its last step means nothing: the chord to the next mark is taken. */
function goOn(
  piece: Piece,
  i: number,
  way: 1 | -1,
  name: LandmarkName,
  at: Point,
  from: Held | undefined,
): Held {
  const mark = piece.mark(i, name);
  const freedom = piece.freedom(name);
  if (!mark) return { at, step: from ? minus(at, from.at) : { x: 0, y: 0 }, freedom };
  if (from) {
    const miss = minus(mark, { x: from.at.x + from.step.x, y: from.at.y + from.step.y });
    if (Math.hypot(miss.x, miss.y) < 2 * from.freedom)
      return { at: mark, step: minus(mark, from.at), freedom };
  }
  return { at: mark, step: piece.chordStep(i, way, name), freedom: 2.5 * freedom };
}

const minus = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });
const between = (a: Point, b: Point, share: number): Point => ({
  x: a.x + share * (b.x - a.x),
  y: a.y + share * (b.y - a.y),
});
/** Share that flow has beside going on as before: by the inverse squares of what each may be wrong by. */
const flowTrust = (backError: number, freedom: number): number => {
  const flowSd = 1 + 2 * backError;
  return freedom ** 2 / (freedom ** 2 + flowSd ** 2);
};

/** A marked point does not move: next to nothing, but more than nothing so that sums stay finite. */
const markedSd = 0.05;

const nowhere = { at: { x: 0, y: 0 }, step: { x: 0, y: 0 } };

/** Flow of every held landmark from the last picture to this one, and how well it comes back. */
function tellFlow(
  vision: Vision,
  before: VisionMat,
  after: VisionMat,
  from: GreyPicture,
  to: GreyPicture,
  held: ReadonlyMap<LandmarkName, Held>,
  bodyLength: number,
): ReadonlyMap<LandmarkName, { readonly at: Point; readonly backError: number }> {
  const names = [...held.keys()];
  const scale = 2 ** flowLevel;
  const shrink = (point: Point, picture: GreyPicture): Point => ({
    x: (point.x - picture.x) / scale - 0.5,
    y: (point.y - picture.y) / scale - 0.5,
  });
  const starts = names.map((name) => shrink(held.get(name)?.at ?? { x: 0, y: 0 }, from));
  const guesses = names.map((name) => {
    const { at, step } = held.get(name) ?? nowhere;
    return shrink({ x: at.x + step.x, y: at.y + step.y }, to);
  });
  const options = {
    window: 2 * Math.round((flowWindow * bodyLength) / scale / 2) + 1,
    levels: flowLevels,
  };
  const there = flowStep(vision, before, after, starts, guesses, options);
  const back = flowStep(
    vision,
    after,
    before,
    there.map((p, k) => p ?? guesses[k] ?? { x: 0, y: 0 }),
    starts,
    options,
  );
  const flows = new Map<LandmarkName, { at: Point; backError: number }>();
  names.forEach((name, k) => {
    const found = there[k];
    const returned = back[k];
    const start = starts[k];
    if (!found || !returned || !start) return;
    const backError = scale * Math.hypot(returned.x - start.x, returned.y - start.y);
    // flow that does not come back within a limb's breadth is flow of something else
    if (backError > 0.03 * bodyLength) return;
    flows.set(name, {
      at: { x: (found.x + 0.5) * scale + to.x, y: (found.y + 0.5) * scale + to.y },
      backError,
    });
  });
  return flows;
}

/** The picture's own pixels, centres at whole numbers; a shown picture's first centre lies at a half. */
const inCrop = (point: Point, picture: GreyPicture): Point => ({
  x: point.x - picture.x - 0.5,
  y: point.y - picture.y - 0.5,
});

function flowMat(vision: Vision, pyramid: readonly GreyLevel[] | undefined): VisionMat {
  const level = pyramid?.[flowLevel] ?? pyramid?.[0];
  const mat = new vision.Mat(level?.height ?? 1, level?.width ?? 1, vision.CV_8UC1);
  if (pyramid) fill(mat, pyramid);
  return mat;
}

function fill(mat: VisionMat, pyramid: readonly GreyLevel[]): void {
  const level = pyramid[flowLevel] ?? pyramid[0];
  if (level) mat.data.set(level.grey);
}
