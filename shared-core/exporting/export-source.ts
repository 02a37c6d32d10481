import { type ShownLine, shownLines } from '../drawing/shown-line';
import type { ComputedReading, Reading, ReadingDefinition } from '../measures/reading';
import type { BodyContext } from '../measures/body/context/body-context';
import { computeReadings, readingContext, type ReadingKnowledge } from '../measures/compute-readings';
import { definitionOn } from '../measures/definition-on';
import { catalogue } from '../measures/families';
import { swimDoubtWords, timesDoubtWords } from '../measures/kick-doubt-words';
import type { Swimmer } from '../swim-file/squad-schema';
import type { Swim } from '../swim-file/swim-schema';
import type { ClipClock } from '../timeline/clip-clock';

/** A swim made ready for export: readings computed, body lines found. Nothing of it is stored. */
export interface ExportSource {
  readonly swim: Swim;
  readonly swimmer: Swimmer | null;
  readonly clock: ClipClock;
  readonly context: BodyContext;
  readonly readings: readonly Reading[];
  /** Of every reading, named as this swim's position has it. */
  readonly definitions: readonly ReadingDefinition[];
  readonly lines: ReadonlyMap<number, ShownLine>;
  /** What speaks against its readings, and against its very times, in words; null where nothing does. */
  readonly doubt: string | null;
  readonly timesDoubt: string | null;
}

export interface NamedReading {
  readonly definition: ReadingDefinition;
  readonly reading: ComputedReading;
}

export function exportSource(swim: Swim, knowledge: ReadingKnowledge): ExportSource {
  const context = readingContext(swim, knowledge);
  const readings = computeReadings(context);
  const { factor } = swim.clip.slowdown;
  return {
    swim,
    swimmer: knowledge.swimmer,
    clock: context.input.clock,
    context,
    readings,
    definitions: catalogue.map((each) => definitionOn(each, swim.card)),
    lines: shownLines(swim),
    doubt: swimDoubtWords(readings, factor),
    timesDoubt: timesDoubtWords(readings, factor),
  };
}

/** Readings by id with their definitions, those that are computed, in the order asked for. */
export function namedReadings(
  { readings, definitions }: Pick<ExportSource, 'readings' | 'definitions'>,
  ids: readonly string[],
): readonly NamedReading[] {
  return ids.flatMap((id): NamedReading[] => {
    const definition = definitions.find((each) => each.id === id);
    const reading = readings.find((each) => each.id === id);
    return definition && reading?.status === 'computed' ? [{ definition, reading }] : [];
  });
}

/** Readings put on stills and sheets when nobody chose: the first that can be computed. A choice of ours. */
const usual = [
  'kick1-top-to-entry',
  'kick2-bottom-to-exit',
  'kick-frequency',
  'kick-amplitude-toe',
  'stroke-rate',
  'body-wave-speed',
  'trunk-pitch',
  'knee-angle',
];

export function usualReadings(
  source: Pick<ExportSource, 'readings' | 'definitions'>,
  most: number,
): readonly NamedReading[] {
  return namedReadings(source, usual).slice(0, most);
}
