import { trunkAndLegs } from '../follow/seen-points';
import type { LandmarkName } from '../marks/landmark';
import type { Point } from '../units/point';
import type { BodySighting } from './body-sighting';

/** How long the parts of a swimmer look over many pictures, pixels of the shown picture. */
export interface SeenLengths {
  /** Fingertip to toe, stretched, from trunk and legs and the proportions of a grown swimmer. */
  readonly bodyLength: number;
  /** Wrist to fingertip and ankle to toe, where the outline shows the end. */
  readonly hand: number;
  readonly foot: number;
  readonly limbs: readonly {
    readonly from: LandmarkName;
    readonly to: LandmarkName;
    /** The middle of what is seen, and what is hardly ever passed. */
    readonly usual: number;
    readonly most: number;
  }[];
}

/** Hand and foot, shares of fingertip to toe: round proportions of a grown swimmer, from memory. */
const handShare = 0.078;
const footShare = 0.097;
const limbEnds: readonly (readonly [LandmarkName, LandmarkName])[] = [
  ['shoulder', 'hip'],
  ['hip', 'knee'],
  ['knee', 'ankle'],
  ['ankle', 'toe'],
  ['shoulder', 'ear'],
  ['shoulder', 'elbow'],
  ['elbow', 'wrist'],
  ['wrist', 'fingertip'],
];

/** Lengths from what was seen on many pictures; null when nothing was. */
export function seenLengths(bodies: readonly BodySighting[]): SeenLengths | null {
  if (bodies.length === 0) return null;
  const place = (body: BodySighting, name: LandmarkName): Point | null =>
    name === 'fingertip' ? body.handEnd : name === 'toe' ? body.footEnd : body.landmarks[name].at;
  const lengths = limbEnds.map(([from, to]) => ({
    from,
    to,
    seen: bodies
      .flatMap((body) => {
        const [a, b] = [place(body, from), place(body, to)];
        return a && b ? [Math.hypot(a.x - b.x, a.y - b.y)] : [];
      })
      .sort((a, b) => a - b),
  }));
  const at = (to: LandmarkName, share: number): number | null => {
    const seen = lengths.find((each) => each.to === to)?.seen ?? [];
    return seen.length > 0 ? (seen[Math.floor(share * (seen.length - 1))] ?? null) : null;
  };
  const [trunk, thigh, shank] = [at('hip', 0.5), at('knee', 0.5), at('ankle', 0.5)];
  if (trunk === null || thigh === null || shank === null) return null;
  const bodyLength = (trunk + thigh + shank) / trunkAndLegs;
  if (!(bodyLength > 0)) return null;
  return {
    bodyLength,
    hand: at('fingertip', 0.5) ?? handShare * bodyLength,
    foot: at('toe', 0.5) ?? footShare * bodyLength,
    limbs: lengths.flatMap(({ from, to }) => {
      const [usual, most] = [at(to, 0.5), at(to, 0.9)];
      return usual !== null && most !== null ? [{ from, to, usual, most }] : [];
    }),
  };
}
