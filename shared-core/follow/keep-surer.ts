import type { LandmarkName } from '../marks/landmark';
import type { FollowedRun, Posture } from '../swim-file/swim-schema';
import type { Point } from '../units/point';
import { expectedSquare } from './expected-error';
import { usefulShare } from './follow-confidence';

type FollowedRow = FollowedRun['points'][number];

/** What was followed before must be surer by this much to stay: of two alike the newer knows more marks. Our default. */
const surerShare = 0.15;

/**
 * The fresh runs, save that where the same frames had been followed before and are less sure now, what was there stays: an
 * answer to one question must not lose what was held elsewhere. Where the coach has since marked an end of such a run, the
 * old points must have been within 2 % of the body length there; what they were off fades out over the run.
 *
 * @param bodyLength fingertip to toe, pixels
 */
export function keepSurer(
  before: readonly FollowedRun[],
  fresh: readonly FollowedRun[],
  postures: readonly Posture[],
  bodyLength: number,
): readonly FollowedRun[] {
  return fresh.map((run) => {
    const { landmark, frame, points } = run;
    const old = points.map((_, i) => pointOn(before, landmark, frame + i));
    const known = old.filter((point) => point !== null);
    if (known.length < points.length) return run;
    if (doubtOf(known) >= surerShare * doubtOf(points)) return run;
    const end = frame + points.length;
    const offs = [frame - 1, end].map((at) => offAt(before, postures, landmark, at));
    if (offs.some((off) => Math.hypot(off.x, off.y) > usefulShare * bodyLength)) return run;
    const [first, last] = offs;
    return {
      ...run,
      points: known.map(([x, y, confidence], i): FollowedRow => {
        const share = (i + 1) / (points.length + 1);
        const fade = (axis: 'x' | 'y'): number =>
          (1 - share) * (first?.[axis] ?? 0) + share * (last?.[axis] ?? 0);
        return [round(x + fade('x')), round(y + fade('y')), confidence];
      }),
    };
  });
}

const doubtOf = (points: readonly FollowedRow[]): number =>
  points.reduce((sum, [, , confidence]) => sum + expectedSquare(confidence), 0);

function pointOn(runs: readonly FollowedRun[], landmark: LandmarkName, frame: number): FollowedRow | null {
  for (const run of runs) {
    const point = run.landmark === landmark ? run.points[frame - run.frame] : undefined;
    if (point) return point;
  }
  return null;
}

/** How far a mark lies from what had been followed on its frame; nothing where it was a mark then too. */
function offAt(
  before: readonly FollowedRun[],
  postures: readonly Posture[],
  landmark: LandmarkName,
  frame: number,
): Point {
  const was = pointOn(before, landmark, frame);
  const mark = postures.find((posture) => posture.frame === frame)?.points[landmark];
  return was && mark ? { x: mark.x - was[0], y: mark.y - was[1] } : { x: 0, y: 0 };
}

/** A hundredth of a pixel, as followed points are kept. */
const round = (value: number): number => Math.round(100 * value) / 100;
