import type { SwimSummary } from '#core/host-contract/operations';
import { cardWords } from '../bench/card-words';

export interface ShelfFilter {
  readonly text: string;
  readonly stroke: SwimSummary['card']['stroke'] | null;
  readonly aids: 'with' | 'without' | null;
}
export const noFilter: ShelfFilter = { text: '', stroke: null, aids: null };

export interface SwimGroup {
  readonly key: string;
  readonly name: string;
  readonly swims: readonly SwimSummary[];
}

/** Everything a coach might type to find a swim again. */
function wordsOf({ card, clip }: SwimSummary): string {
  const { title, facts } = cardWords(card);
  return [title, ...facts, card.stroke, card.date, card.note, clip.originalName]
    .join(' ')
    .toLocaleLowerCase();
}

/** Swims that match every word and filter, by swimmer's name, newest first. */
export function filterSwims(swims: readonly SwimSummary[], filter: ShelfFilter): readonly SwimGroup[] {
  const wanted = filter.text.toLocaleLowerCase().split(/\s+/).filter(Boolean);
  const groups = new Map<string, SwimSummary[]>();
  for (const swim of swims) {
    const { card } = swim;
    if (filter.stroke !== null && card.stroke !== filter.stroke) continue;
    if (filter.aids !== null && card.aids.length > 0 !== (filter.aids === 'with')) continue;
    if (wanted.length > 0) {
      const words = wordsOf(swim);
      if (!wanted.every((word) => words.includes(word))) continue;
    }
    const key = card.swimmerId ?? `name:${card.swimmerName}`;
    groups.set(key, [...(groups.get(key) ?? []), swim]);
  }
  return [...groups]
    .map(([key, list]) => ({
      key,
      name: list[0]?.card.swimmerName || 'Swimmer not named',
      swims: list.sort(
        (a, b) => b.card.date.localeCompare(a.card.date) || b.changedAt.localeCompare(a.changedAt),
      ),
    }))
    .sort((a, b) => a.name.localeCompare(b.name));
}
