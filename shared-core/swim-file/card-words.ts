import type { SwimCard } from './swim-schema';

export const strokeWords: Readonly<Record<SwimCard['stroke'], string>> = {
  butterfly: 'butterfly',
  'dolphin-kick': 'dolphin kick',
};
export const armWords: Readonly<Record<SwimCard['arms'], string>> = {
  stroking: 'stroking',
  stretched: 'arms stretched',
  overlapped: 'hands overlapped',
  folded: 'arms folded',
  'at-sides': 'arms at the sides',
  sculling: 'sculling',
  'one-arm-left': 'left arm',
  'one-arm-right': 'right arm',
  'one-arm-alternating': 'one arm, alternating',
};
export const sideWords: Readonly<Record<SwimCard['sideUp'], string>> = {
  front: 'on the front',
  back: 'on the back',
  'left-side': 'left side up',
  'right-side': 'right side up',
};
export const aidWords: Readonly<Record<SwimCard['aids'][number], string>> = {
  fins: 'fins',
  monofin: 'monofin',
  snorkel: 'snorkel',
  board: 'board',
  paddles: 'paddles',
  'pull-buoy': 'pull buoy',
};
export const viewWords: Readonly<Record<SwimCard['view'], string>> = {
  side: 'side view',
  front: 'front view',
  rear: 'rear view',
  below: 'view from below',
  above: 'view from above',
  deck: 'view from the deck',
};

const conditionNames: Readonly<Record<'head' | 'hips' | 'depth', Readonly<Record<string, string>>>> = {
  head: { low: 'below the arms', level: 'level with the arms', high: 'above the arms' },
  hips: { low: 'low', level: 'level', high: 'high' },
  depth: {
    surface: 'at the surface',
    shallow: 'shallow',
    middle: 'half-way down',
    deep: 'deep',
  },
};

/** One level of a condition that trials compare, in words. */
export function conditionWords(of: 'head' | 'hips' | 'depth', level: string): string {
  return conditionNames[of][level] ?? level;
}

/** What was tried on this repeat, in words that need nothing beside them: "hips high", "half-way down", the coach's own tags. */
export function triedWords({ head, hips, depth, free }: SwimCard['conditions']): readonly string[] {
  return [
    ...(head ? [`head ${conditionWords('head', head)}`] : []),
    ...(hips ? [`hips ${conditionWords('hips', hips)}`] : []),
    ...(depth ? [conditionWords('depth', depth)] : []),
    ...free,
  ];
}

/** Aids in words; feet without fins are said to be bare, because that is what is compared. */
export function aidsWords(aids: SwimCard['aids']): string {
  const named = aids.map((aid) => aidWords[aid]);
  const finned = aids.includes('fins') || aids.includes('monofin');
  return [...named, ...(finned ? [] : ['bare feet'])].join(', ');
}

// made once: making one costs a hundred times what using it does
const dayFormat = new Intl.DateTimeFormat(undefined, { day: 'numeric', month: 'short', year: 'numeric' });

/** "14 May 2026", as this machine's language writes it. */
export function dayWords(isoDay: string): string {
  return dayFormat.format(new Date(`${isoDay}T12:00:00`));
}

/** The drill, or the stroke where it is swum plain; and how, without what the drill's own words say already. */
export function swumWords(card: SwimCard): { readonly what: string; readonly how: readonly string[] } {
  const what = card.drill || strokeWords[card.stroke];
  const said = what.toLocaleLowerCase();
  const how = [
    card.arms === 'stroking' ? '' : armWords[card.arms],
    card.sideUp === 'front' ? '' : sideWords[card.sideUp],
    card.effort ?? '',
  ];
  return { what, how: how.filter((each) => each !== '' && !said.includes(each)) };
}

/** "Pip · butterfly, steady" and the facts behind it: what the coach knows a swim by. */
export function cardWords(card: SwimCard): { readonly title: string; readonly facts: readonly string[] } {
  const { what, how } = swumWords(card);
  return {
    title: `${card.swimmerName || 'Swimmer not named'} · ${[what, ...how].join(', ')}`,
    facts: [dayWords(card.date), viewWords[card.view], aidsWords(card.aids), ...triedWords(card.conditions)],
  };
}
