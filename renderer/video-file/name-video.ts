import { cardWords, dayWords } from '#core/swim-file/card-words';
import type { SwimCard } from '#core/swim-file/swim-schema';

/** What is written over a swim's picture in a video. */
export const videoTitle = (card: SwimCard): string =>
  `${cardWords(card).title} · ${dayWords(card.date)}`.slice(0, 200);

/** A video's file name without its ending: who, and when. The host makes it safe for every system. */
export function videoName(cards: readonly SwimCard[]): string {
  const swims = cards.map(({ swimmerName, date }) => `${swimmerName || 'swimmer'} ${date}`);
  return [...new Set(swims)].join(' and ').slice(0, 150);
}
