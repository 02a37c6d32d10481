import type { PairTable } from '../compare/pair-table';
import { doubtsInWords } from '../measures/doubtful';
import type { Reading } from '../measures/reading';
import { type CsvCell, csvText, sixDigits } from './csv-text';

const cells = (reading: Reading): readonly CsvCell[] =>
  reading.status === 'computed' && reading.interval
    ? [
        sixDigits(reading.value),
        sixDigits(reading.interval.low),
        sixDigits(reading.interval.high),
        reading.unit,
      ]
    : ['', '', '', ''];

const doubtsOf = (reading: Reading): string =>
  reading.status === 'computed' ? doubtsInWords(reading).join('; ') : '';

/**
 * The differences of a pair, second swim minus first, a row a reading: both values with their 95 % interval, the
 * difference with its own, and the verdict; at the end what is doubtful of either value. What is not alike is named in the row it forbids a verdict in.
 */
export function differencesCsv({ rows }: PairTable): string {
  const of = (which: string): readonly string[] => ['', '_low', '_high', '_unit'].map((end) => which + end);
  return csvText(
    [
      ...['reading', 'label', 'strokes', ...of('a'), ...of('b')],
      ...['b_minus_a', 'b_minus_a_low', 'b_minus_a_high', 'verdict', 'not_alike', 'doubtful_a', 'doubtful_b'],
    ],
    rows.map(({ definition, strokes, first, second, difference, verdict, because }) => [
      ...[definition.id, definition.label, strokes, ...cells(first), ...cells(second)],
      ...(difference
        ? [sixDigits(difference.value), sixDigits(difference.low), sixDigits(difference.high)]
        : ['', '', '']),
      ...[verdict, because.map(({ kind }) => kind).join(' '), doubtsOf(first), doubtsOf(second)],
    ]),
  );
}
