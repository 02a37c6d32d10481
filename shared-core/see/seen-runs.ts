import { seenByFrame } from '../follow/seen-points';
import { landmarkNames } from '../marks/landmark';
import type { SeenRun } from '../swim-file/swim-schema';
import type { SeenPoints } from './lay-seen';

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
    sum += (shoulder.x - hip.x) / Math.max(1, Math.hypot(shoulder.x - hip.x, shoulder.y - hip.y));
  }
  const mean = bodies > 0 ? sum / bodies : 0;
  return Math.abs(mean) < levelEnough ? null : mean > 0 ? 'right' : 'left';
}
