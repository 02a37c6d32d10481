import { bodyChain } from '../../../marks/landmark';
import type { Posture } from '../../../swim-file/swim-schema';
import type { MarkingError } from '../../../uncertainty/marking-error';
import type { Point } from '../../../units/point';
import { distance } from '../points/angles';

export interface BodyLength {
  /** Fingertip to toe in streamline, picture pixels, and its variance. */
  readonly pixels: number;
  readonly variance: number;
  readonly frames: readonly number[];
  readonly from: 'body-line' | 'recorded';
}

/** Elbow and shoulder open at least this far count as arms stretched, degrees. Our default. */
const stretchedFrom = 150;

/**
 * Body length from the body lines on which all eight links of the chain are marked and the arms are stretched: mean
 * length along the chain. Each link reads long by its noise across it; that is taken off.
 * Null when there is no such posture.
 *
 * @see von Loebbecke et al. 2009: body length from fingertip to toe
 */
export function bodyLengthFromPostures(postures: readonly Posture[], error: MarkingError): BodyLength | null {
  const frames: number[] = [];
  let sum = 0;
  let variance = 0;
  const noises = bodyChain.map((name) => error.landmarkSd[name] ** 2);
  const chain: Point[] = [];
  for (const posture of postures) {
    if (!chainOf(posture.points, chain) || !armsStretched(posture)) continue;
    let length = 0;
    let own = 0;
    // unit vector of the link before: what moving a landmark changes is the difference of its two links' directions
    let beforeX = 0;
    let beforeY = 0;
    for (let i = 0; i < chain.length; i++) {
      const here = chain[i] as Point;
      const next = chain[i + 1];
      const noise = noises[i] as number;
      let nextX = 0;
      let nextY = 0;
      const link = next ? distance(here, next) : 0;
      if (next && link > 0) {
        nextX = (next.x - here.x) / link;
        nextY = (next.y - here.y) / link;
        const across = noise + (noises[i + 1] as number);
        length += link - Math.min(link / 2, across / (2 * link));
      }
      own += noise * ((beforeX - nextX) ** 2 + (beforeY - nextY) ** 2);
      beforeX = nextX;
      beforeY = nextY;
    }
    // points closer together than they can be marked are no body: a length of them would make every share infinite
    if (!(length * length > own)) continue;
    frames.push(posture.frame);
    sum += length;
    variance += own;
  }
  const n = frames.length;
  if (n === 0) return null;
  return { pixels: sum / n, variance: variance / (n * n), frames, from: 'body-line' };
}

/** Lays the landmarks of the chain into `chain`, in order; false where one is missing. */
function chainOf(points: Posture['points'], chain: Point[]): boolean {
  const { fingertip, wrist, elbow, shoulder, hip, knee, ankle, toe } = points;
  if (!fingertip || !wrist || !elbow || !shoulder || !hip || !knee || !ankle || !toe) return false;
  chain.length = 0;
  chain.push(fingertip, wrist, elbow, shoulder, hip, knee, ankle, toe);
  return true;
}

/** Whether elbow and shoulder are both open beyond 150°, so that the body line is the streamline. */
function armsStretched(posture: Posture): boolean {
  const { wrist, elbow, shoulder, hip } = posture.points;
  const elbowOpen = inner(wrist, elbow, shoulder);
  const shoulderOpen = inner(elbow, shoulder, hip);
  return (
    elbowOpen !== null && shoulderOpen !== null && elbowOpen >= stretchedFrom && shoulderOpen >= stretchedFrom
  );
}

function inner(a: Point | undefined, at: Point | undefined, b: Point | undefined): number | null {
  if (!a || !at || !b) return null;
  const ax = a.x - at.x;
  const ay = a.y - at.y;
  const bx = b.x - at.x;
  const by = b.y - at.y;
  if ((ax === 0 && ay === 0) || (bx === 0 && by === 0)) return null;
  return (Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) * 180) / Math.PI;
}
