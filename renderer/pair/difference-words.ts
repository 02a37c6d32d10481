import type { PairRow, PairVerdict } from '#core/compare/pair-table';
import type { Unlike, UnlikeKind } from '#core/compare/like-with-like';
import { aidsWords, armWords, sideWords, strokeWords, viewWords } from '#core/swim-file/card-words';
import { doubtOfBoth } from '#core/measures/doubtful';
import { formatReading, type ReadingText } from '#core/measures/format-reading';
import type { SwimCard } from '#core/swim-file/swim-schema';
import { pairWords } from '#core/words/pair';

export const verdictWords: Readonly<Record<PairVerdict, string>> = {
  clear: pairWords('clear'),
  'within-error': pairWords('withinMarkingError'),
  unlike: pairWords('notLikeLike'),
  'other-unit': pairWords('notOneUnit'),
  missing: pairWords('notBoth'),
};

const kindWords: Readonly<Record<UnlikeKind, string>> = {
  aids: pairWords('aids'),
  stroke: 'stroke',
  drill: pairWords('drill'),
  arms: pairWords('arms'),
  'side-up': pairWords('sideUp'),
  view: pairWords('view'),
  breathing: pairWords('breathing'),
  swimmer: pairWords('swimmer'),
  effort: pairWords('effort'),
};

export const unlikeWords = (unlike: readonly Unlike[]): string =>
  [...new Set(unlike.map(({ kind }) => kindWords[kind]))].join(', ');

/** "Aids: A fins, B bare feet": what differs, in the words of the cards. */
export function unlikeSentence(unlike: Unlike, cards: readonly [SwimCard, SwimCard]): string {
  const [a, b] = cards.map((card, index) =>
    saidOf(unlike.kind, card, index === 0 ? unlike.first : unlike.second),
  );
  const name = kindWords[unlike.kind];
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}: A ${a}, B ${b}`;
}

function saidOf(kind: UnlikeKind, card: SwimCard, plain: string): string {
  switch (kind) {
    case 'aids':
      return aidsWords(card.aids);
    case 'stroke':
      return strokeWords[card.stroke];
    case 'drill':
      return card.drill || pairWords('plain');
    case 'arms':
      return armWords[card.arms];
    case 'side-up':
      return sideWords[card.sideUp];
    case 'view':
      return viewWords[card.view];
    case 'swimmer':
      return card.swimmerName || pairWords('notNamed');
    case 'effort':
      return card.effort ?? pairWords('effortNotSaid');
    case 'breathing':
      return plain;
  }
}

/** Difference as printed: signed, with half its 95 % interval, in digits the interval earns. */
export function differenceText({ difference, definition, first, second }: PairRow): ReadingText | null {
  if (!difference || first.status !== 'computed' || second.status !== 'computed') return null;
  const { value, low, high } = difference;
  const text = formatReading(
    { id: first.id, unit: first.unit, value, interval: { low, high }, ...doubtOfBoth(first, second) },
    definition.digits,
  );
  const isPlus = value > 0 && !/^[+−]/.test(text.value) && Number(text.value) !== 0;
  return isPlus ? { ...text, value: `+${text.value}` } : text;
}
