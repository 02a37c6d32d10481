import { landmarkNames } from '../marks/landmark';
import { firstAtOrAfter } from '../signal/first-at-or-after';
import type { Posture } from '../swim-file/swim-schema';
import type { Point } from '../units/point';

/**
 * About where a swimmer's landmarks are on any frame: as marked, and between two postures on the straight way from one to
 * the other; before the first and after the last as there. Good for telling the swimmer from what lies behind, not for measuring.
 *
 * @param postures ascending in frame
 */
export function bodyBetween(postures: readonly Posture[], frame: number): readonly Point[] {
  const next = firstAtOrAfter(
    postures.map((each) => each.frame),
    frame,
  );
  const after = postures[next] ?? postures.at(-1);
  const before = after && after.frame > frame ? (postures[next - 1] ?? after) : after;
  if (!before || !after) return [];
  const share = after.frame > before.frame ? (frame - before.frame) / (after.frame - before.frame) : 0;
  return landmarkNames.flatMap((name) => {
    const [a, b] = [before.points[name], after.points[name]];
    if (a && b) return [{ x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) }];
    return a ?? b ?? [];
  });
}
