import { type LandmarkName, landmarkNames } from '../marks/landmark';
import type { SeenRun } from '../swim-file/swim-schema';
import type { Point } from '../units/brand';
import type { SeenPoints } from './lay-seen';
import { trunkAndLegs } from './seen-lengths';

/** A body laid on a frame. */
export interface SeenFrame {
  readonly frame: number;
  readonly points: SeenPoints;
}

/** How seen bodies are kept: a run for each landmark and each stretch of frames without a hole. Frames ascending. */
export function seenRuns(frames: readonly SeenFrame[]): readonly SeenRun[] {
  const stretches: SeenFrame[][] = [];
  for (const each of frames) {
    const last = stretches.at(-1);
    if (last && last.at(-1)?.frame === each.frame - 1) last.push(each);
    else stretches.push([each]);
  }
  return stretches.flatMap((stretch) =>
    landmarkNames.map((landmark) => ({
      landmark,
      frame: stretch[0]?.frame ?? 0,
      points: stretch.map(({ points }): [number, number, number] => {
        const { x, y, sd } = points[landmark];
        return [tenth(x), tenth(y), Math.max(0.1, tenth(sd))];
      }),
    })),
  );
}

/** A tenth of a pixel is finer than any of them is known. */
const tenth = (value: number): number => Math.round(10 * value) / 10;

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

/** A body leans at most so far from level on most pictures, or no way of travel is told: cosine of 60°. Our choice. */
const levelEnough = 0.5;

/** The way a seen swimmer goes: head before hips. Null when the body stands or it is not the same all along. */
export function travelOfSeen(seen: readonly SeenRun[]): 'left' | 'right' | null {
  let sum = 0;
  let bodies = 0;
  for (const body of seenByFrame(seen).values()) {
    const [shoulder, hip] = [body.get('shoulder'), body.get('hip')];
    if (!shoulder || !hip) continue;
    bodies += 1;
    sum += (shoulder.x - hip.x) / Math.max(1, apart(shoulder, hip));
  }
  const mean = bodies > 0 ? sum / bodies : 0;
  return Math.abs(mean) < levelEnough ? null : mean > 0 ? 'right' : 'left';
}
