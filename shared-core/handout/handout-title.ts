import { dayWords } from '../swim-file/card-words';
import type { SwimCard } from '../swim-file/swim-schema';

/** What a handout is called in a window's title and in the PDF's facts. */
export function handoutTitle(card: Pick<SwimCard, 'swimmerName' | 'date'>): string {
  return `Handout for ${card.swimmerName || 'the swimmer'}, ${dayWords(card.date)}`;
}
