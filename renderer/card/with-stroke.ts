import type { SwimCard } from '#core/swim-file/swim-schema';

/** The card with another stroke; arms that fit only the stroke before are set to what is usual for the new one. */
export function withStroke(card: SwimCard, stroke: SwimCard['stroke']): SwimCard {
  if (stroke === 'dolphin-kick' && card.arms === 'stroking') return { ...card, stroke, arms: 'stretched' };
  if (stroke === 'butterfly' && card.stroke === 'dolphin-kick' && card.arms === 'stretched')
    return { ...card, stroke, arms: 'stroking' };
  return { ...card, stroke };
}
