import { z } from 'zod';
import type { SwimCard } from '../swim-file/swim-schema';
import { catalogue } from './families';

type Drill = Pick<SwimCard, 'stroke' | 'arms' | 'sideUp' | 'drill'>;

/** The readings a coach chose to see first, by the drill they are for; ids in the coach's order. */
export const shortListsSchema = z.record(
  z.string().min(1).max(260),
  z.array(z.string().min(1).max(80)).max(24),
);
export type ShortLists = Readonly<Record<string, readonly string[]>>;

const known: ReadonlySet<string> = new Set(catalogue.map(({ id }) => id));

/** How frequent, how large and how far the kick is, and where the hips lie: asked of every drill. */
const ofEveryKick = ['kick-frequency', 'kick-amplitude-toe', 'distance-per-kick', 'depth-hip', 'hip-height'];

/**
 * The name a drill's own list is kept under: the coach's words for it, or what was swum where there are none. Case and
 * spaces make no difference.
 */
export function shortListKey({ stroke, arms, sideUp, drill }: Drill): string {
  const words = drill.trim().toLowerCase().replace(/\s+/g, ' ');
  return words === '' ? `${stroke} ${arms} ${sideUp}` : `drill ${words}`;
}

/**
 * What a coach of this drill looks at first: timing of both kicks in the stroke, then kick frequency and size, distance
 * a kick, depth, head and hips. Our own choice. The head is measured against the arms, so it is left out where the
 * arms are not stretched ahead.
 */
export function usualShortList({ stroke, arms }: Drill): readonly string[] {
  if (stroke === 'butterfly')
    return ['kick1-top-to-entry', 'kick2-bottom-to-exit', 'stroke-rate', ...ofEveryKick, 'head-offset'];
  const ahead = arms === 'stretched' || arms === 'overlapped';
  return [...ofEveryKick, 'down-up-ratio', 'speed-hip', ahead ? 'head-offset' : 'trunk-pitch'];
}

/** The coach's own list for this drill, or the usual one; a reading that no longer exists is passed over. */
export function shortListFor(drill: Drill, kept: ShortLists): readonly string[] {
  return (kept[shortListKey(drill)] ?? usualShortList(drill)).filter((id) => known.has(id));
}

/** The lists with a reading put last on this drill's list, or taken off it. */
export function withPinned(kept: ShortLists, drill: Drill, id: string, pinned: boolean): ShortLists {
  const others = shortListFor(drill, kept).filter((each) => each !== id);
  return { ...kept, [shortListKey(drill)]: pinned ? [...others, id] : others };
}

/** The lists with a reading of this drill's list moved up (−1) or down (1); as they were at either end. */
export function withMoved(kept: ShortLists, drill: Drill, id: string, by: -1 | 1): ShortLists {
  const list = [...shortListFor(drill, kept)];
  const at = list.indexOf(id);
  const other = list[at + by];
  if (at < 0 || other === undefined) return kept;
  list[at] = other;
  list[at + by] = id;
  return { ...kept, [shortListKey(drill)]: list };
}

/** The lists without one of this drill: it has the usual list again. */
export function withUsual(kept: ShortLists, drill: Drill): ShortLists {
  const { [shortListKey(drill)]: _own, ...others } = kept;
  return others;
}
