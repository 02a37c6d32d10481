import type { LandmarkName } from '../marks/landmark';
import type { SeenRun } from '../swim-file/swim-schema';
import type { Point } from '../units/point';
import { keptWith } from '../units/kept-with';

/** Shoulder to ankle as a share of fingertip to toe: a round proportion of a grown swimmer, from memory. */
export const trunkAndLegs = 0.59;

/** Seen points by frame, then landmark. Cost: linear in points. */
export type SeenByFrame = ReadonlyMap<number, ReadonlyMap<LandmarkName, Point & { readonly sd: number }>>;

export function seenByFrame(seen: readonly SeenRun[]): SeenByFrame {
  const frames = new Map<number, Map<LandmarkName, Point & { readonly sd: number }>>();
  for (const { landmark, frame, points } of seen)
    points.forEach(([x, y, sd], i) => {
      const own = frames.get(frame + i) ?? new Map<LandmarkName, Point & { readonly sd: number }>();
      own.set(landmark, { x, y, sd });
      frames.set(frame + i, own);
    });
  return frames;
}

/** The same, worked out once for runs that don't change. */
export const seenBodies = keptWith(seenByFrame);

/**
 * Fingertip to toe in pixels from seen points: the middle of what trunk and legs look like, with the proportions of a grown
 * swimmer. Null when nothing is seen.
 */
export function lengthOfSeen(seen: readonly SeenRun[]): number | null {
  const lengths = [...seenByFrame(seen).values()].flatMap((body) => {
    const [shoulder, hip, knee, ankle] = (['shoulder', 'hip', 'knee', 'ankle'] as const).map((name) =>
      body.get(name),
    );
    return shoulder && hip && knee && ankle
      ? [apart(shoulder, hip) + apart(hip, knee) + apart(knee, ankle)]
      : [];
  });
  const middle = lengths.sort((a, b) => a - b)[Math.floor(lengths.length / 2)];
  return middle ? middle / trunkAndLegs : null;
}

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
