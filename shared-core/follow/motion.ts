import type { Sightings } from './blend-sightings';
import { type BridgedPlace, bridgeMotion, type TimedPlace } from './bridge-motion';
import type { LandmarkName } from '../marks/landmark';
import type { Point } from '../units/point';
import { markShare } from './agreed-places';
import type { Piece } from './piece';

/** What a landmark's motion is thought to be while the pictures are gone through one way. */
export interface Motion {
  /** Where every landmark is expected on a picture, from what was seen before and is marked beyond. */
  expected(index: number): ReadonlyMap<LandmarkName, BridgedPlace>;
  saw(index: number, sightings: Sightings): void;
}

/** So many last places tell speed and acceleration; older ones add nothing. */
const remembered = 6;
/** Marks beyond that are looked forward to. */
const markedAhead = 2;
/** What is seen in the picture is off by at least this share of the body length. */
const leastShare = 0.002;
/** Limbs stranger than this are seen less well: so much variance for each unit more, share of the body length. */
const usualResidual = 0.35;
const strangeShare = 0.03;
/** Before anything is seen of a landmark's motion it is slow, give or take: body lengths a second, and a second². */
const looseSpeed = 2;
const looseAcceleration = 8;

export function createMotion(piece: Piece, camera: readonly Point[], way: 1 | -1): Motion {
  const { bodyLength, times } = piece;
  const jerks = piece.jerkSd();
  const memory = new Map<LandmarkName, TimedPlace[]>();
  const loose = { speed: looseSpeed * bodyLength, acceleration: looseAcceleration * bodyLength };
  // time runs with the pass
  const timeOf = (index: number): number => way * (times[index] as number);
  const still = ({ x, y }: Point, index: number): Point => ({
    x: x - (camera[index]?.x ?? 0),
    y: y - (camera[index]?.y ?? 0),
  });
  const keep = (name: LandmarkName, place: TimedPlace): void => {
    const own = memory.get(name) ?? [];
    own.push(place);
    if (own.length > remembered) own.shift();
    memory.set(name, own);
  };
  const first = piece.pictures[0]?.frame ?? 0;
  const end = piece.pictures.length - 1;
  const beside = piece.around
    .filter(({ frame }) => (way > 0 ? frame < first : frame > first + end))
    .sort((a, b) => way * (a.frame - b.frame));
  for (const { landmark, time, x, y, sd } of beside)
    keep(landmark, {
      time: way * time,
      at: still({ x, y }, way > 0 ? 0 : end),
      variance: Math.min(1e8, Math.max(sd ** 2, (leastShare * bodyLength) ** 2)),
    });
  const marksAhead = (name: LandmarkName, index: number): readonly TimedPlace[] => {
    const frames = piece.markIndexes(name).filter((at) => way * (at - index) > 0);
    const nearest = way > 0 ? frames.slice(0, markedAhead) : frames.slice(-markedAhead).reverse();
    return nearest.flatMap((at) => {
      const mark = piece.mark(at, name);
      return mark ? [{ time: timeOf(at), at: still(mark, at), variance: (markShare * bodyLength) ** 2 }] : [];
    });
  };
  return {
    expected(index) {
      const out = new Map<LandmarkName, BridgedPlace>();
      for (const name of piece.landmarksOn(index)) {
        const bridged = bridgeMotion(
          timeOf(index),
          memory.get(name) ?? [],
          marksAhead(name, index),
          jerks[name],
          loose,
        );
        const moved = camera[index];
        if (!bridged || !moved) continue;
        const at = { x: bridged.at.x + moved.x, y: bridged.at.y + moved.y };
        out.set(name, { at, variance: bridged.variance });
      }
      return out;
    },
    saw(index, sightings) {
      for (const [name, { at, variance, residual }] of sightings) {
        const mark = piece.mark(index, name);
        const strange = Math.max(0, residual - usualResidual) ** 2;
        keep(name, {
          time: timeOf(index),
          at: still(mark ?? at, index),
          variance: mark
            ? (markShare * bodyLength) ** 2
            : Math.max(variance, (leastShare * bodyLength) ** 2) + strange * (strangeShare * bodyLength) ** 2,
        });
      }
    },
  };
}
