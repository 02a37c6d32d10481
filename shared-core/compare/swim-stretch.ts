import type { FrameRange } from '../timeline/frame-range';
import type { FollowedRun, SeenRun, Swim } from '../swim-file/swim-schema';

/**
 * The same swim with the marks of one stretch only, for readings of that stretch. Clip, card and scene stay whole, so
 * frames and lengths mean what they meant.
 */
export function swimStretch(swim: Swim, { first, last }: FrameRange): Swim {
  const inside = ({ frame }: { readonly frame: number }): boolean => frame >= first && frame <= last;
  return {
    ...swim,
    events: swim.events.filter(inside),
    postures: swim.postures.filter(inside),
    followed: swim.followed.flatMap((run) => cutRun(run, first, last) ?? []),
    seen: swim.seen.flatMap((run) => cutRun(run, first, last) ?? []),
    dismissed: swim.dismissed.filter(inside),
  };
}

function cutRun<T extends FollowedRun | SeenRun>(run: T, first: number, last: number): T | null {
  const from = Math.max(first, run.frame);
  const points = run.points.slice(from - run.frame, Math.max(0, last - run.frame + 1));
  return points.length > 0 ? { ...run, frame: from, points } : null;
}
