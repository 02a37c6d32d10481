import { bodyChain, type LandmarkName } from '../marks/landmark';
import type { Posture } from '../swim-file/swim-schema';

/**
 * Lengths of the body's parts, shares of fingertip to toe: round proportions of a grown swimmer, from memory. They
 * only set how wide to look; no reading uses them.
 */
const shares: Readonly<Partial<Record<LandmarkName, number>>> = {
  fingertip: 0.078,
  wrist: 0.11,
  elbow: 0.125,
  shoulder: 0.225,
  hip: 0.185,
  knee: 0.18,
  ankle: 0.097,
};

/**
 * Fingertip to toe in pixels, as far as the postures show it: the longest chain of any posture, parts that are not
 * marked filled in by usual proportions. A part seen end on looks short, so the longest is nearest. Null without two
 * neighbouring landmarks on any posture.
 */
export function seenBodyLength(postures: readonly Posture[]): number | null {
  let longest = 0;
  for (const { points } of postures) {
    let seen = 0;
    let share = 0;
    bodyChain.slice(1).forEach((to, i) => {
      const from = bodyChain[i];
      const a = from && points[from];
      const b = points[to];
      if (!from || !a || !b) return;
      seen += Math.hypot(a.x - b.x, a.y - b.y);
      share += shares[from] as number;
    });
    if (share > 0.15) longest = Math.max(longest, seen / share);
  }
  return longest > 0 ? longest : null;
}
