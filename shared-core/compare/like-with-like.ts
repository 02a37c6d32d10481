import type { SwimCard } from '../swim-file/swim-schema';

/** In what two swims are not alike; closed. */
const unlikeKinds = [
  'aids',
  'stroke',
  'drill',
  'arms',
  'side-up',
  'view',
  'breathing',
  'swimmer',
  'effort',
] as const;
export type UnlikeKind = (typeof unlikeKinds)[number];

export interface Unlike {
  readonly kind: UnlikeKind;
  /** What each swim was, as the card has it. */
  readonly first: string;
  readonly second: string;
}

/**
 * What was swum or filmed another way: then a difference of readings may be a difference of tools or of drill, and is
 * never called clear. Whether breaths were taken is a matter of single strokes and is judged where they are known.
 */
export function unlikeCards(first: SwimCard, second: SwimCard): readonly Unlike[] {
  const found: Unlike[] = [];
  const say = (kind: UnlikeKind, of: (card: SwimCard) => string): void => {
    const a = of(first);
    const b = of(second);
    if (a !== b) found.push({ kind, first: a, second: b });
  };
  say('aids', (card) => [...card.aids].sort().join(', '));
  say('stroke', (card) => card.stroke);
  say('drill', (card) => card.drill.trim().toLowerCase());
  say('arms', (card) => card.arms);
  say('side-up', (card) => card.sideUp);
  say('view', (card) => card.view);
  say('swimmer', (card) => card.swimmerId ?? card.swimmerName);
  say('effort', (card) => card.effort ?? '');
  return found;
}

/** Kinds that forbid a verdict on any reading: what was swum was another thing. Swimmer and effort are only said. */
const forbidding: ReadonlySet<UnlikeKind> = new Set(['aids', 'stroke', 'drill', 'arms', 'side-up']);

/**
 * Which of the found unlikenesses forbid a verdict on a reading. Another view shows lengths and angles otherwise but
 * not instants: it forbids only readings that lean on body lines.
 */
export function forbidVerdict(found: readonly Unlike[], leansOnBodyLines: boolean): readonly Unlike[] {
  return found.filter(
    ({ kind }) => forbidding.has(kind) || kind === 'breathing' || (kind === 'view' && leansOnBodyLines),
  );
}
