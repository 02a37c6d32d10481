import { catalogue } from '#core/measures/families';
import type { ComputedReading } from '#core/measures/reading';
import { drillLibrary } from '#core/practice/drill-library';
import type { Drill } from '#core/practice/drill-schema';
import { workPhrase } from '#core/practice/item-phrase';
import type { Work } from '#core/practice/work';
import { aidsWords, dayWords } from '#core/swim-file/card-words';
import { sentence } from '../card/sentence';
import { earnedDigits, formatReading, readingLine } from '#core/measures/format-reading';

const definitions = new Map(catalogue.map((each) => [each.id, each]));

export const readingLabel = (id: string): string => definitions.get(id)?.label ?? id;

/** A way of swimming in words, aids last: lines of one reading differ in these. */
export function lineWords(work: Work, own: readonly Drill[]): string {
  const drill = [...own, ...drillLibrary].find(({ id }) => id === work.drill);
  const swum = workPhrase({ ...work, aids: [] }, drill?.name ?? (work.drill || null));
  return `${sentence(swum)}, ${aidsWords([...work.aids])}`;
}

/** "1.23 ± 0.04 m/s". */
export function readingText(reading: ComputedReading): string {
  return readingLine(formatReading(reading, definitions.get(reading.id)?.digits ?? 2));
}

/** A number with the digits its interval earns. */
export const figuresFor =
  (half: number) =>
  (value: number): string => {
    const text = value.toFixed(earnedDigits(half, 2));
    return (Number(text) === 0 ? text.replace('-', '') : text).replace('-', '−');
  };

/** ISO days in a sentence, as the coach writes days. */
export const withDays = (words: string): string => words.replace(/\d{4}-\d\d-\d\d/g, dayWords);
