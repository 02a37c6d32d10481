import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import type { Squad, Swimmer } from '#core/swim-file/squad-schema';
import type { View } from '#core/swim-file/swim-schema';
import { armWords, cardWords, sideWords, strokeWords } from '../card/card-words';

export interface ShelfFilter {
  readonly text: string;
  /** Key of a group: one swimmer. */
  readonly swimmer: string | null;
  readonly stroke: SwimSummary['card']['stroke'] | null;
  readonly aids: 'with' | 'without' | null;
  readonly view: View | null;
}
export const noFilter: ShelfFilter = { text: '', swimmer: null, stroke: null, aids: null, view: null };

export interface SwimGroup {
  readonly key: string;
  readonly name: string;
  /** Null where a card names someone who is not in the squad, or no one. */
  readonly swimmer: Swimmer | null;
  readonly swims: readonly SwimSummary[];
}

export const groupKey = ({ card }: SwimSummary): string => card.swimmerId ?? `name:${card.swimmerName}`;

const searchWords = new WeakMap<SwimSummary, string>();

/** Everything a coach might type to find a swim again. */
function wordsOf(swim: SwimSummary): string {
  const known = searchWords.get(swim);
  if (known !== undefined) return known;
  const { card, clip } = swim;
  const { title, facts } = cardWords(card);
  const words = [
    title,
    ...facts,
    strokeWords[card.stroke],
    armWords[card.arms],
    sideWords[card.sideUp],
    card.date,
    card.note,
    clip.originalName,
  ]
    .join(' ')
    .toLocaleLowerCase();
  searchWords.set(swim, words);
  return words;
}

/** Sorts ISO days and instants, newest first; they sort as plain text. */
const later = (a: string, b: string): number => (a < b ? 1 : a > b ? -1 : 0);

/** Swims that match every word and filter, by swimmer's name, newest first; ties in date: last changed first. */
export function filterSwims(
  swims: readonly SwimSummary[],
  squad: Squad,
  filter: ShelfFilter,
): readonly SwimGroup[] {
  const wanted = filter.text.toLocaleLowerCase().split(/\s+/).filter(Boolean);
  const swimmers = new Map(squad.swimmers.map((each) => [each.id, each]));
  const groups = new Map<string, SwimSummary[]>();
  for (const swim of swims) {
    const { card } = swim;
    const key = groupKey(swim);
    if (filter.swimmer !== null && key !== filter.swimmer) continue;
    if (filter.stroke !== null && card.stroke !== filter.stroke) continue;
    if (filter.aids !== null && card.aids.length > 0 !== (filter.aids === 'with')) continue;
    if (filter.view !== null && card.view !== filter.view) continue;
    if (wanted.length > 0) {
      const words = `${swimmers.get(key)?.name.toLocaleLowerCase() ?? ''} ${wordsOf(swim)}`;
      if (!wanted.every((word) => words.includes(word))) continue;
    }
    const list = groups.get(key);
    if (list) list.push(swim);
    else groups.set(key, [swim]);
  }
  return [...groups]
    .map(([key, list]): SwimGroup => {
      const swimmer = swimmers.get(key) ?? null;
      return {
        key,
        swimmer,
        name: swimmer?.name ?? (list[0]?.card.swimmerName || 'Swimmer not named'),
        swims: list.sort((a, b) => later(a.card.date, b.card.date) || later(a.changedAt, b.changedAt)),
      };
    })
    .sort((a, b) => a.name.localeCompare(b.name));
}
