import { type CsvCell, csvText } from '../exporting/csv-text';
import { doubtsInWords } from '../measures/doubtful';
import { aidsKey } from './work';
import type { TrialRow } from './trial-row';

const cardColumns = [
  'swim',
  'day',
  'order',
  'stroke',
  'drill',
  'arms',
  'side up',
  'aids',
  'head',
  'hips',
  'depth',
  'tags',
  'kick cycles',
];

/**
 * A trial's table as CSV (RFC 4180, comma, CRLF): a row a repeat, in the order swum; three columns a reading: value,
 * unit, standard deviation from marking; at the end what is doubtful of each. What is not known is left empty. Text that a spreadsheet would run as a formula
 * gets an apostrophe before it.
 */
export function trialCsv(rows: readonly TrialRow[], readingIds: readonly string[]): string {
  const header = [
    ...cardColumns,
    ...readingIds.flatMap((id) => [id, `${id} unit`, `${id} marking SD`]),
    ...readingIds.map((id) => `${id} doubtful`),
  ];
  const inOrder = [...rows].sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.order - b.order));
  const lines = inOrder.map((row): readonly CsvCell[] => {
    const { work, tags } = row;
    return [
      row.swimId,
      row.day,
      row.order,
      work.stroke,
      work.drill,
      work.arms,
      work.sideUp,
      aidsKey(work.aids),
      tags.head ?? '',
      tags.hips ?? '',
      tags.depth ?? '',
      tags.free.join('; '),
      row.kickCycles ?? '',
      ...readingIds.flatMap((id): CsvCell[] => {
        const found = row.values.get(id);
        return found ? [found.value, found.unit, Math.sqrt(found.ownVariance)] : ['', '', ''];
      }),
      ...readingIds.map((id): CsvCell => {
        const found = row.values.get(id);
        return found ? doubtsInWords(found).join('; ') : '';
      }),
    ];
  });
  return csvText(header, lines);
}
