import type { SwimCard } from '#core/swim-file/swim-schema';

const strokeWords: Readonly<Record<SwimCard['stroke'], string>> = {
  butterfly: 'butterfly',
  'dolphin-kick': 'dolphin kick',
};
const armWords: Readonly<Record<SwimCard['arms'], string>> = {
  stroking: '',
  stretched: 'arms stretched',
  overlapped: 'hands overlapped',
  folded: 'arms folded',
  'at-sides': 'arms at the sides',
  sculling: 'sculling',
  'one-arm-left': 'left arm',
  'one-arm-right': 'right arm',
  'one-arm-alternating': 'one arm, alternating',
};
const sideWords: Readonly<Record<SwimCard['sideUp'], string>> = {
  front: '',
  back: 'on the back',
  'left-side': 'left side up',
  'right-side': 'right side up',
};

/** "Pip · butterfly, steady" and the facts behind it: what the coach knows a swim by. */
export function cardWords(card: SwimCard): { readonly title: string; readonly facts: readonly string[] } {
  const swum = [card.drill || strokeWords[card.stroke], armWords[card.arms], card.effort ?? ''].filter(
    Boolean,
  );
  const aids = card.aids.length > 0 ? card.aids.map((aid) => aid.replace('-', ' ')).join(', ') : 'bare feet';
  const day = new Date(`${card.date}T12:00:00`).toLocaleDateString(undefined, {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
  });
  return {
    title: `${card.swimmerName || 'Swimmer not named'} · ${swum.join(', ')}`,
    facts: [day, `${card.view} view`, sideWords[card.sideUp], aids].filter(Boolean),
  };
}
