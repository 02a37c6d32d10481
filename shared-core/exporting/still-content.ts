import type { StillContent } from '../drawing/still-ops';
import { type ClipClock, realTimeOf } from '../timeline/clip-clock';
import type { ComputedReading, ReadingDefinition } from '../measures/reading';
import type { Swim } from '../swim-file/swim-schema';
import { cardWords } from '../swim-file/card-words';
import { formatReading, readingLine } from '../measures/format-reading';
import { markPhrase } from '../marks/mark-words';
import { exportsWords } from '../words/exports';

export const mostStillReadings = 6;

export function stillContent(
  swim: Swim,
  clock: ClipClock,
  frame: number,
  chosen: readonly { readonly definition: ReadingDefinition; readonly reading: ComputedReading }[],
): StillContent {
  const words = cardWords(swim.card);
  const events = swim.events.filter((mark) => mark.frame === frame).map(markPhrase);
  const event = events.join(', ');
  return {
    title: words.title,
    facts: words.facts.join(' · '),
    event: event === '' ? '' : event.charAt(0).toUpperCase() + event.slice(1),
    where: exportsWords('frameSFrame', {
      frame: frame + 1,
      starts: clock.table.starts.length,
      realTimeOf: realTimeOf(clock, frame).toFixed(3),
    }),
    readings: chosen.slice(0, mostStillReadings).map(({ definition, reading }) => {
      return { label: definition.label, value: readingLine(formatReading(reading, definition.digits)) };
    }),
    invented: swim.card.invented,
  };
}
