import type { LandmarkName } from '../marks/landmark';
import type { Point } from '../units/point';
import { type BodyMask, maskEnd } from './mask-end';
import { type PoseOutput, type PosePoint, poseNumbers } from './pose-output';
import type { Square } from './square';

/** What the network says of one landmark: the middle of left and right, and how far apart they are. */
export interface LandmarkSighting {
  readonly at: Point;
  /** Left to right, pixels. */
  readonly apart: number;
  /** How likely the worse of both is in sight, 0 to 1. */
  readonly visible: number;
}

/** A body as one picture shows it. Points in pixels of the shown picture. */
export interface BodySighting {
  readonly sure: number;
  readonly landmarks: Readonly<Record<Exclude<LandmarkName, 'fingertip' | 'toe'>, LandmarkSighting>>;
  /** Bases of index finger and big toe, which the network gives in place of the tips. */
  readonly indexBase: LandmarkSighting;
  readonly toeBase: LandmarkSighting;
  /** Where the outline ends beyond wrist and ankle; null where that can't be told. */
  readonly handEnd: Point | null;
  readonly footEnd: Point | null;
}

/** A hand and a foot with pointed toes go at most so far beyond wrist and ankle, shares of trunk and thigh together. */
const handReach = 0.5;
const footReach = 0.55;

/** What a picture says of the nine landmarks, from the network's points and its outline. */
export function bodySighting(pose: PoseOutput, mask: BodyMask, square: Square): BodySighting {
  const of = (name: keyof typeof poseNumbers): LandmarkSighting => {
    const [left, right] = poseNumbers[name].map((number) => pose.points[number] ?? nowhere) as [
      PosePoint,
      PosePoint,
    ];
    return {
      at: { x: (left.x + right.x) / 2, y: (left.y + right.y) / 2 },
      apart: Math.hypot(left.x - right.x, left.y - right.y),
      visible: Math.min(left.visible, right.visible),
    };
  };
  const landmarks = {
    wrist: of('wrist'),
    elbow: of('elbow'),
    shoulder: of('shoulder'),
    ear: of('ear'),
    hip: of('hip'),
    knee: of('knee'),
    ankle: of('ankle'),
  };
  const [indexBase, toeBase] = [of('indexBase'), of('toeBase')];
  const span =
    distance(landmarks.shoulder.at, landmarks.hip.at) + distance(landmarks.hip.at, landmarks.knee.at);
  return {
    sure: pose.sure,
    landmarks,
    indexBase,
    toeBase,
    handEnd: maskEnd(
      mask,
      square,
      landmarks.wrist.at,
      between(landmarks.elbow.at, indexBase.at),
      handReach * span,
    ),
    footEnd: maskEnd(
      mask,
      square,
      landmarks.ankle.at,
      between(landmarks.ankle.at, toeBase.at),
      footReach * span,
    ),
  };
}

const nowhere: PosePoint = { x: Number.NaN, y: Number.NaN, visible: 0, present: 0 };
const between = (a: Point, b: Point): Point => ({ x: b.x - a.x, y: b.y - a.y });
const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
