import { bodyChain } from '../../marks/landmark';
import type { Posture } from '../../swim-file/swim-schema';
import type { MarkingError } from '../../uncertainty/marking-error';

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
  for (const posture of postures) {
    const points = bodyChain.map((name) => posture.points[name]);
    if (points.some((p) => p === undefined) || !armsStretched(posture)) continue;
    let length = 0;
    let own = 0;
    for (let i = 0; i < points.length; i++) {
      const here = points[i];
      const before = points[i - 1];
      const after = points[i + 1];
      const name = bodyChain[i];
      if (!here || !name) continue;
      const v = error.landmarkSd[name] ** 2;
      if (after) {
        const link = Math.hypot(after.x - here.x, after.y - here.y);
        const next = bodyChain[i + 1];
        const across = v + (next ? error.landmarkSd[next] ** 2 : 0);
        length += link - (link > 0 ? Math.min(link / 2, across / (2 * link)) : 0);
      }
      const pull = direction(before, here);
      const push = direction(here, after);
      own += v * ((pull.x - push.x) ** 2 + (pull.y - push.y) ** 2);
    }
    if (!(length > 0)) continue;
    frames.push(posture.frame);
    sum += length;
    variance += own;
  }
  const n = frames.length;
  if (n === 0) return null;
  return { pixels: sum / n, variance: variance / (n * n), frames, from: 'body-line' };
}

interface XY {
  readonly x: number;
  readonly y: number;
}

function direction(a: XY | undefined, b: XY | undefined): XY {
  if (!a || !b) return { x: 0, y: 0 };
  const d = Math.hypot(b.x - a.x, b.y - a.y);
  return d > 0 ? { x: (b.x - a.x) / d, y: (b.y - a.y) / d } : { x: 0, y: 0 };
}

/** Whether elbow and shoulder are both open beyond 150°, so that the body line is the streamline. */
export function armsStretched(posture: Posture): boolean {
  const { wrist, elbow, shoulder, hip } = posture.points;
  const elbowOpen = inner(wrist, elbow, shoulder);
  const shoulderOpen = inner(elbow, shoulder, hip);
  return (
    elbowOpen !== null && shoulderOpen !== null && elbowOpen >= stretchedFrom && shoulderOpen >= stretchedFrom
  );
}

function inner(a: XY | undefined, at: XY | undefined, b: XY | undefined): number | null {
  if (!a || !at || !b) return null;
  const ax = a.x - at.x;
  const ay = a.y - at.y;
  const bx = b.x - at.x;
  const by = b.y - at.y;
  if (Math.hypot(ax, ay) === 0 || Math.hypot(bx, by) === 0) return null;
  return (Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) * 180) / Math.PI;
}
