import type { Reading, ReadingDefinition } from '../measures/reading';
import { reasonWords } from '../measures/reason-words';
import { csvText, sixDigits } from './csv-text';

const head = [
  'reading',
  'label',
  'status',
  'value',
  'unit',
  'low95',
  'high95',
  'question',
  'cycles',
  'source_events',
  'source_frames',
  'notes',
  'missing',
];

/**
 * Readings as tidy CSV: a row a reading, computed or missing with its reasons. `low95` and `high95` are the ends of the
 * 95 % interval that is printed; `source_frames` count from 0, as in the swim file.
 */
export function readingsCsv(readings: readonly Reading[], catalogue: readonly ReadingDefinition[]): string {
  const labels = new Map(catalogue.map((each) => [each.id, each.label]));
  return csvText(
    head,
    readings.map((each) => {
      const label = labels.get(each.id) ?? each.id;
      if (each.status === 'missing')
        return [
          each.id,
          label,
          each.status,
          ...head.slice(3, -1).map(() => ''),
          each.reasons.map(reasonWords).join(' '),
        ];
      return [
        each.id,
        label,
        each.status,
        sixDigits(each.value),
        each.unit,
        sixDigits(each.interval.low),
        sixDigits(each.interval.high),
        each.interval.question,
        each.cycles,
        each.from.eventIds.join(' '),
        each.from.postureFrames.join(' '),
        each.notes.join(' '),
        '',
      ];
    }),
  );
}

/** Readings as the JSON that the command line prints. */
export function readingsJson(swimId: string, readings: readonly Reading[]): string {
  return JSON.stringify({ format: 'submark-readings', version: 1, swim: swimId, readings }, null, 2);
}
