import type { Reading, ReadingDefinition } from '../measures/reading';
import { readingsDocument } from '../measures/readings-document';
import type { Swim } from '../swim-file/swim-schema';
import { doubtsInWords } from '../measures/doubtful';
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

/** Columns added since: new ones go to the end, so that a table read by place stays readable. */
const added = [
  'group',
  'other_low95',
  'other_high95',
  'other_question',
  'followed_points',
  'source_scene',
  'singles_sd',
  'singles_count',
  'doubtful',
];

/**
 * Readings as tidy CSV: a row a reading, computed or missing with its reasons. `low95` and `high95` are the ends of the
 * 95 % interval that is printed; `doubtful` says why a value may be wrong, and is empty where nothing does; `source_frames` count from 0, as in the swim file.
 */
export function readingsCsv(readings: readonly Reading[], catalogue: readonly ReadingDefinition[]): string {
  const labels = new Map(catalogue.map((each) => [each.id, each.label]));
  const groups = new Map(catalogue.map((each) => [each.id, each.group]));
  return csvText(
    [...head, ...added],
    readings.map((each) => {
      const label = labels.get(each.id) ?? each.id;
      if (each.status === 'missing')
        return [
          each.id,
          label,
          each.status,
          ...head.slice(3, -1).map(() => ''),
          each.reasons.map(reasonWords).join('; '),
          groups.get(each.id) ?? '',
          ...added.slice(1).map(() => ''),
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
        groups.get(each.id) ?? '',
        each.otherInterval ? sixDigits(each.otherInterval.low) : '',
        each.otherInterval ? sixDigits(each.otherInterval.high) : '',
        each.otherInterval?.question ?? '',
        each.followed,
        each.from.sceneItems.join(' '),
        each.singles ? sixDigits(each.singles.sd) : '',
        each.singles?.count ?? '',
        doubtsInWords(each).join('; '),
      ];
    }),
  );
}

/** Readings as the JSON that the command line prints, by the schema in docs/. */
export function readingsJson(swim: Pick<Swim, 'id' | 'card'>, readings: readonly Reading[]): string {
  return JSON.stringify(readingsDocument(swim, readings), null, 2);
}
