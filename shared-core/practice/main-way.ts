import type { SwimCard } from '../swim-file/swim-schema';
import type { Drill } from './drill-schema';
import { likeKey, workOfCard } from './work';

/** Swims looked at most: the latest. Our own choice. */
const most = 12;

/**
 * The swims of the way of swimming that was filmed most often, the latest last; of two filmed as often the one filmed later. At
 * most twelve. Empty without swims.
 */
export function mainWay<Swim extends { readonly card: SwimCard }>(
  swims: readonly Swim[],
  own: readonly Drill[],
): readonly Swim[] {
  const ways = new Map<string, Swim[]>();
  for (const swim of [...swims].sort((a, b) => (a.card.date < b.card.date ? -1 : 1))) {
    const key = likeKey(workOfCard(swim.card, own));
    ways.set(key, [...(ways.get(key) ?? []), swim]);
  }
  let main: readonly Swim[] = [];
  for (const way of ways.values()) {
    const later = (way.at(-1)?.card.date ?? '') > (main.at(-1)?.card.date ?? '');
    if (way.length > main.length || (way.length === main.length && later)) main = way;
  }
  return main.slice(-most);
}
