import { dayWords } from '../swim-file/card-words';
import type { SwimCard } from '../swim-file/swim-schema';
import { handoutPageWords } from '../words/handout-page';

/** What a handout is called in a window's title and in the PDF's facts. */
export function handoutTitle(card: Pick<SwimCard, 'swimmerName' | 'date'>): string {
  return handoutPageWords('handout', {
    swimmerName: card.swimmerName || handoutPageWords('swimmer'),
    day: dayWords(card.date),
  });
}
