import { landmarkNames } from '../../../marks/landmark';
import type { BodyContext } from '../context/body-context';
import type { Measured } from './measured';
import { keptWith } from '../../../units/kept-with';

const kept = keptWith((_: readonly number[]) => new Map<string, number>());

/** How many of a reading's points the machine followed. Readings of one wave share their frames, and so the count. */
export function followedAmong(
  context: BodyContext,
  { frames, landmarks = landmarkNames }: Pick<Measured, 'frames' | 'landmarks'>,
): number {
  if (context.followedCount === 0 || frames.length === 0) return 0;
  const known = kept(frames);
  const key = landmarks.join(' ');
  const found = known.get(key);
  if (found !== undefined) return found;
  let count = 0;
  for (const frame of frames) {
    const followed = context.postureAt(frame)?.followed ?? [];
    if (followed.length > 0) for (const name of new Set(landmarks)) if (followed.includes(name)) count += 1;
  }
  known.set(key, count);
  return count;
}
