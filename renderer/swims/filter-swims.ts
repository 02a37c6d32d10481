import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import type { Squad, Swimmer } from '#core/swim-file/squad-schema';
import type { View } from '#core/swim-file/swim-schema';
import { armWords, cardWords, sideWords, strokeWords } from '#core/swim-file/card-words';
import { keptWith } from '#core/units/kept-with';
import { swimsWords } from '#core/words/swims';

export interface ShelfFilter {
  readonly text: string;
  /** Key of a group: one swimmer. */
  readonly swimmer: string | null;
  readonly stroke: SwimSummary['card']['stroke'] | null;
  readonly aids: 'with' | 'without' | null;
  readonly view: View | null;
  /** What needs the coach's hand. */
  readonly care: Care | null;
}
export const cares = ['missing', 'copies', 'twice', 'unmarked', 'no-one'] as const;
/**
 * The clip is missing or another; changed in two places; its clip is in another swim too; nothing marked; no swimmer.
 */
export type Care = (typeof cares)[number];
export const noFilter: ShelfFilter = {
  text: '',
  swimmer: null,
  stroke: null,
  aids: null,
  view: null,
  care: null,
};

export interface SwimGroup {
  readonly key: string;
  readonly name: string;
  /** Null where a card names someone who is not in the squad, or no one. */
  readonly swimmer: Swimmer | null;
  readonly swims: readonly SwimSummary[];
}

const groupKey = ({ card }: SwimSummary): string => card.swimmerId ?? `name:${card.swimmerName}`;

/** Everything a coach might type to find a swim again. */
export const swimWords = keptWith(({ card, clip }: SwimSummary): string => {
  const { title, facts } = cardWords(card);
  return [
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
});

// made once: comparing through it is many times quicker than through each string
const byName = new Intl.Collator();

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
  const needsCare = filter.care === null ? null : careOf(filter.care, swims);
  for (const swim of swims) {
    const { card } = swim;
    const key = groupKey(swim);
    if (filter.swimmer !== null && key !== filter.swimmer) continue;
    if (filter.stroke !== null && card.stroke !== filter.stroke) continue;
    if (filter.aids !== null && card.aids.length > 0 !== (filter.aids === 'with')) continue;
    if (filter.view !== null && card.view !== filter.view) continue;
    if (needsCare && !needsCare(swim)) continue;
    if (wanted.length > 0) {
      const words = `${swimmers.get(key)?.name.toLocaleLowerCase() ?? ''} ${swimWords(swim)}`;
      if (!wanted.every((word) => words.includes(word))) continue;
    }
    const list = groups.get(key);
    if (list) list.push(swim);
    else groups.set(key, [swim]);
  }
  // swimmers without swims are there too, unless something only swims have is asked for
  if (filter.stroke === null && filter.aids === null && filter.view === null && filter.care === null)
    for (const { id, name } of squad.swimmers) {
      if (groups.has(id) || (filter.swimmer !== null && filter.swimmer !== id)) continue;
      if (swims.some(({ card }) => card.swimmerId === id)) continue;
      if (wanted.every((word) => name.toLocaleLowerCase().includes(word))) groups.set(id, []);
    }
  return [...groups]
    .map(([key, list]): SwimGroup => {
      const swimmer = swimmers.get(key) ?? null;
      return {
        key,
        swimmer,
        name: swimmer?.name ?? (list[0]?.card.swimmerName || swimsWords('swimmerNotNamed')),
        swims: list.sort((a, b) => later(a.card.date, b.card.date) || later(a.changedAt, b.changedAt)),
      };
    })
    .sort((a, b) => byName.compare(a.name, b.name));
}

/** Key of a clip by its fingerprint: two swims with the same one were made of the same film. */
const clipKey = ({ clip: { fingerprint } }: Pick<SwimSummary, 'clip'>): string =>
  `${fingerprint.bytes}:${fingerprint.edgesSha256}`;

function careOf(care: Care, swims: readonly SwimSummary[]): (swim: SwimSummary) => boolean {
  switch (care) {
    case 'missing':
      return ({ clipStatus }) => clipStatus !== 'present';
    case 'copies':
      return ({ copies }) => copies > 0;
    case 'unmarked':
      return ({ eventCount, postureCount }) => eventCount + postureCount === 0;
    case 'no-one':
      return ({ card }) => card.swimmerId === null;
    case 'twice': {
      const times = new Map<string, number>();
      for (const swim of swims) times.set(clipKey(swim), (times.get(clipKey(swim)) ?? 0) + 1);
      return (swim) => (times.get(clipKey(swim)) ?? 0) > 1;
    }
  }
}
