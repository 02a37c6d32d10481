import { alignBody, type AlignedBody } from '#core/follow/align-body';
import type { Expected } from '#core/follow/body-priors';
import type { Sighting } from '#core/follow/blend-sightings';
import type { GreyLevel } from '#core/follow/grey-pyramid';
import { type BodyPlaces, predictBody } from '#core/follow/predict-body';
import type { LandmarkName } from '#core/marks/landmark';
import type { Point } from '#core/units/brand';
import type { GreyPicture } from './grey-picture';
import { markedSd, type Piece } from './piece';
import { createFlowTeller, type FlowedPoint } from './tell-flow';
import type { Vision } from './vision';

export type Sightings = ReadonlyMap<LandmarkName, Sighting>;

/** What one way through the pictures found. */
export interface FollowedPass {
  /** By picture. */
  readonly seen: readonly Sightings[];
  /** How far what lies behind the swimmer moved in the picture from the first step to the last, px: what the camera did. */
  readonly camera: Point;
}

/** After a mark that was not met, a step may differ from what is expected by this much more. */
const freshFreedom = 2.5;
/** A mark met within this many times a landmark's freedom says that its last step was right. */
const metWithin = 2;
/** Flow beside a thin fast limb is often that of the water behind: going on as before counts more. Set on the sample clips. */
const flowShare = 0.25;

/**
 * Follows the body through the pictures one way. The body is expected to move on as it did, or as plain flow says
 * where it is found; then all limbs together are laid so that they look as they did where they were marked, so that
 * nothing drifts. On a frame where a landmark is marked it is where the coach put it.
 */
export function followPass(
  vision: Vision,
  piece: Piece,
  pyramids: readonly (readonly GreyLevel[])[],
  way: 1 | -1,
  tick: () => void,
): FollowedPass {
  const { pictures, bodyLength } = piece;
  const seen = new Array<Sightings>(pictures.length).fill(new Map());
  const begin = way > 0 ? 0 : pictures.length - 1;
  let now: BodyPlaces = new Map();
  let before: BodyPlaces = new Map();
  let freedom = new Map<LandmarkName, number>();
  /** What the background did in the last step. */
  let camera: Point | null = null;
  const path = { x: 0, y: 0 };
  const flow = createFlowTeller(vision, pyramids[begin], bodyLength);
  try {
    for (let i = begin; i >= 0 && i < pictures.length; i += way) {
      const picture = pictures[i];
      const pyramid = pyramids[i];
      if (!picture || !pyramid) break;
      const last = pictures[i - way];
      flow.show(pyramid);
      const moved = last ? flow.background(last, picture, now) : null;
      // the swimmer goes on as before in the water, whatever the camera does
      const onward = carried(predictBody(before, now), moved, camera);
      camera = moved;
      path.x += moved?.x ?? 0;
      path.y += moved?.y ?? 0;
      const flows = last ? flow.tell(last, picture, now, onward) : new Map<LandmarkName, FlowedPoint>();
      const aligned = layBody(piece, i, picture, pyramid, onward, flows, freedom);
      const places = new Map<LandmarkName, Point>();
      const past = new Map(now);
      const free = new Map<LandmarkName, number>();
      for (const [name, point] of aligned.points) {
        const mark = piece.mark(i, name);
        const at = mark ?? { x: point.x + picture.x + 0.5, y: point.y + picture.y + 0.5 };
        places.set(name, at);
        free.set(name, piece.freedom(name));
        if (mark) {
          const guess = onward.get(name);
          const met =
            guess && Math.hypot(guess.x - mark.x, guess.y - mark.y) < metWithin * piece.freedom(name);
          if (!met) {
            const step = piece.stepAt(i, way, name);
            past.set(name, { x: mark.x - step.x, y: mark.y - step.y });
            free.set(name, freshFreedom * piece.freedom(name));
          }
        }
      }
      seen[i] = sightingsOf(aligned, picture);
      before = past;
      now = places;
      freedom = free;
      tick();
    }
  } finally {
    flow.close();
  }
  return { seen, camera: path };
}

/** Takes the camera's last step out of a prediction and puts its present one in. */
function carried(places: BodyPlaces, moved: Point | null, before: Point | null): BodyPlaces {
  if (!moved || !before) return places;
  const dx = moved.x - before.x;
  const dy = moved.y - before.y;
  return new Map([...places].map(([name, { x, y }]) => [name, { x: x + dx, y: y + dy }]));
}

/** Lays the body on one picture, from where it goes on to. */
function layBody(
  piece: Piece,
  i: number,
  picture: GreyPicture,
  pyramid: readonly GreyLevel[],
  onward: BodyPlaces,
  flows: ReadonlyMap<LandmarkName, FlowedPoint>,
  freedom: ReadonlyMap<LandmarkName, number>,
): AlignedBody {
  const expected = new Map<LandmarkName, Expected>();
  for (const name of piece.landmarksOn(i)) {
    const mark = piece.mark(i, name);
    const own = freedom.get(name) ?? piece.freedom(name);
    const at = mark ?? between(onward.get(name), flows.get(name), own);
    if (at)
      expected.set(name, {
        at: { x: at.x - picture.x - 0.5, y: at.y - picture.y - 0.5 },
        sd: mark ? markedSd : own,
      });
  }
  return alignBody(pyramid, piece.templatesFor(i), expected, piece.lengthsOn(i));
}

/** Between going on as before and what flow says, the nearer to flow the better it comes back. */
function between(
  onward: Point | undefined,
  flow: FlowedPoint | undefined,
  freedom: number,
): Point | undefined {
  if (!onward || !flow) return onward;
  const flowSd = 1 + 2 * flow.backError;
  const trust = (flowShare * freedom ** 2) / (freedom ** 2 + flowSd ** 2);
  return { x: onward.x + trust * (flow.at.x - onward.x), y: onward.y + trust * (flow.at.y - onward.y) };
}

/** An aligned body as it was seen, in the shown picture's pixels. */
export function sightingsOf(aligned: AlignedBody, picture: GreyPicture): Sightings {
  return new Map(
    [...aligned.points].map(([name, { x, y }]): [LandmarkName, Sighting] => [
      name,
      {
        at: { x: x + picture.x + 0.5, y: y + picture.y + 0.5 },
        variance: aligned.variances.get(name) ?? Number.POSITIVE_INFINITY,
        residual: residualAt(aligned, name),
      },
    ]),
  );
}

/** The strangest of the limbs that a landmark holds. */
function residualAt({ residuals }: AlignedBody, name: LandmarkName): number {
  let most = 0;
  for (const [limb, value] of residuals)
    if (limb.from === name || limb.to === name) most = Math.max(most, value);
  return most;
}
