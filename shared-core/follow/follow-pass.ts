import type { Vision } from './vision';
import { type AlignedBody, alignBody } from './align-body';
import type { Sighting, Sightings } from './blend-sightings';
import type { Expected } from './body-priors';
import type { BridgedPlace } from './bridge-motion';
import type { GreyLevel } from './grey-pyramid';
import type { LandmarkName } from '../marks/landmark';
import type { Point } from '../units/point';
import { type GreyPicture, ownPlace, shownPlace } from './grey-picture';
import { createMotion } from './motion';
import { markedShare, type Piece } from './piece';
import { type BodyPlaces, createFlowTeller, type FlowedPoint } from './tell-flow';

/** Flow that comes back exactly is still off by this share of the body length. Our default. */
const flowShareSd = 0.0018;
/** However well a motion is known, the next place is expected no nearer than this share of the body length. */
const leastShare = 0.003;
/** Flow beside a thin fast limb is often that of the water behind: going on as before counts more. Set on the sample clips. */
const flowShare = 0.25;

/**
 * Follows the body through the pictures one way. The body is expected to move on as it did toward its next mark, or as
 * plain flow says where it is found; then all limbs together are laid so that they look as they did where they were marked, so that
 * nothing drifts. On a frame where a landmark is marked it is where the coach put it.
 */
export function followPass(
  vision: Vision,
  piece: Piece,
  pyramids: readonly (readonly GreyLevel[])[],
  camera: readonly Point[],
  way: 1 | -1,
  tick: () => void,
): readonly Sightings[] {
  const { pictures, bodyLength } = piece;
  const seen = new Array<Sightings>(pictures.length).fill(new Map());
  const begin = way > 0 ? 0 : pictures.length - 1;
  let now: BodyPlaces = new Map();
  const motion = createMotion(piece, camera, way);
  const flow = createFlowTeller(vision, pyramids[begin], bodyLength);
  try {
    for (let i = begin; i >= 0 && i < pictures.length; i += way) {
      const picture = pictures[i];
      const pyramid = pyramids[i];
      if (!picture || !pyramid) break;
      const last = pictures[i - way];
      flow.show(pyramid);
      const onward = motion.expected(i);
      const guesses = new Map([...onward].map(([name, { at }]) => [name, at]));
      const flows = last ? flow.tell(last, picture, now, guesses) : new Map<LandmarkName, FlowedPoint>();
      const aligned = layBody(piece, i, picture, pyramid, onward, flows);
      const sightings = sightingsOf(aligned, picture);
      const places = new Map<LandmarkName, Point>();
      for (const [name, { at }] of sightings) places.set(name, piece.mark(i, name) ?? at);
      seen[i] = sightings;
      motion.saw(i, sightings);
      now = places;
      tick();
    }
  } finally {
    flow.close();
  }
  return seen;
}

/** Lays the body on one picture, from where it goes on to. */
function layBody(
  piece: Piece,
  i: number,
  picture: GreyPicture,
  pyramid: readonly GreyLevel[],
  onward: ReadonlyMap<LandmarkName, BridgedPlace>,
  flows: ReadonlyMap<LandmarkName, FlowedPoint>,
): AlignedBody {
  const expected = new Map<LandmarkName, Expected>();
  let widest = 0;
  for (const name of piece.landmarksOn(i)) {
    const mark = piece.mark(i, name);
    const bridged = onward.get(name);
    const own = Math.hypot(Math.sqrt(bridged?.variance ?? 0), leastShare * piece.bodyLength);
    const at = mark ?? between(bridged?.at, flows.get(name), own, flowShareSd * piece.bodyLength);
    if (!at) continue;
    if (!mark) widest = Math.max(widest, own);
    expected.set(name, {
      at: ownPlace(picture, at),
      sd: mark ? markedShare * piece.bodyLength : own,
    });
  }
  // a picture halved often enough that what is looked for lies within two of its pixels
  const levels = Math.max(2, Math.min(pyramid.length, 1 + Math.ceil(Math.log2(Math.max(1, widest / 2)))));
  return alignBody(pyramid.slice(0, levels), piece.templatesFor(i), expected, piece.lengthsOn(i));
}

/** Between going on as before and what flow says, the nearer to flow the better it comes back. */
function between(
  onward: Point | undefined,
  flow: FlowedPoint | undefined,
  freedom: number,
  least: number,
): Point | undefined {
  if (!onward || !flow) return onward;
  const flowSd = least + 2 * flow.backError;
  const trust = (flowShare * freedom ** 2) / (freedom ** 2 + flowSd ** 2);
  return { x: onward.x + trust * (flow.at.x - onward.x), y: onward.y + trust * (flow.at.y - onward.y) };
}

/** An aligned body as it was seen, in the shown picture's pixels. */
function sightingsOf(aligned: AlignedBody, picture: GreyPicture): Sightings {
  return new Map(
    [...aligned.points].map(([name, at]): [LandmarkName, Sighting] => [
      name,
      {
        at: shownPlace(picture, at),
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
