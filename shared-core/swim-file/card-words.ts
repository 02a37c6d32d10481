import type { SwimCard } from './swim-schema';
import { cardsWords } from '../words/cards';

export const strokeWords: Readonly<Record<SwimCard['stroke'], string>> = {
  butterfly: cardsWords('butterfly'),
  'dolphin-kick': cardsWords('dolphinKick'),
};
export const armWords: Readonly<Record<SwimCard['arms'], string>> = {
  stroking: cardsWords('stroking'),
  stretched: cardsWords('armsStretched'),
  overlapped: cardsWords('handsOverlapped'),
  folded: cardsWords('armsFolded'),
  'at-sides': cardsWords('armsAtSides'),
  sculling: cardsWords('sculling'),
  'one-arm-left': cardsWords('leftArm'),
  'one-arm-right': cardsWords('rightArm'),
  'one-arm-alternating': cardsWords('oneArmAlternating'),
};
export const sideWords: Readonly<Record<SwimCard['sideUp'], string>> = {
  front: cardsWords('front'),
  back: cardsWords('back'),
  'left-side': cardsWords('leftSideUp'),
  'right-side': cardsWords('rightSideUp'),
};
export const aidWords: Readonly<Record<SwimCard['aids'][number], string>> = {
  fins: cardsWords('fins'),
  monofin: cardsWords('monofin'),
  snorkel: cardsWords('snorkel'),
  board: cardsWords('board'),
  paddles: cardsWords('paddles'),
  'pull-buoy': cardsWords('pullBuoy'),
};
export const viewWords: Readonly<Record<SwimCard['view'], string>> = {
  side: cardsWords('sideView'),
  front: cardsWords('frontView'),
  rear: cardsWords('rearView'),
  below: cardsWords('viewFromBelow'),
  above: cardsWords('viewFromAbove'),
  deck: cardsWords('viewFromDeck'),
};

const conditionNames: Readonly<Record<'head' | 'hips' | 'depth', Readonly<Record<string, string>>>> = {
  head: { low: cardsWords('belowArms'), level: cardsWords('levelArms'), high: cardsWords('aboveArms') },
  hips: { low: cardsWords('low'), level: cardsWords('level'), high: cardsWords('high') },
  depth: {
    surface: cardsWords('atSurface'),
    shallow: cardsWords('shallow'),
    middle: cardsWords('halfWayDown'),
    deep: cardsWords('deep'),
  },
};

/** One level of a condition that trials compare, in words. */
export function conditionWords(of: 'head' | 'hips' | 'depth', level: string): string {
  return conditionNames[of][level] ?? level;
}

/** What was tried on this repeat, in words that need nothing beside them: "hips high", "half-way down", the coach's own tags. */
export function triedWords({ head, hips, depth, free }: SwimCard['conditions']): readonly string[] {
  return [
    ...(head ? [cardsWords('head', { condition: conditionWords('head', head) })] : []),
    ...(hips ? [cardsWords('hips', { condition: conditionWords('hips', hips) })] : []),
    ...(depth ? [conditionWords('depth', depth)] : []),
    ...free,
  ];
}

/** Aids in words; feet without fins are said to be bare, because that is what is compared. */
export function aidsWords(aids: SwimCard['aids']): string {
  const named = aids.map((aid) => aidWords[aid]);
  const finned = aids.includes('fins') || aids.includes('monofin');
  return [...named, ...(finned ? [] : [cardsWords('bareFeet')])].join(', ');
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
    title: `${card.swimmerName || cardsWords('swimmerNotNamed')} · ${[what, ...how].join(', ')}`,
    facts: [dayWords(card.date), viewWords[card.view], aidsWords(card.aids), ...triedWords(card.conditions)],
  };
}
