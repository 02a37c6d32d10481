import { doubtsInWords } from '../measures/doubtful';
import { formatReading, valueLine } from '../measures/format-reading';
import type { Reading, ReadingDefinition } from '../measures/reading';
import { reasonWords } from '../measures/reason-words';
import { bandWords, targetMark } from '../measures/target-mark';
import { neverCompared } from '../measures/never-compared';
import type { Swimmer } from '../swim-file/squad-schema';
import { targetInForce } from '../swim-file/target-in-force';
import { handoutPageWords } from '../words/handout-page';

/** How a reading stands to the target, told by words and by a shape of its own. */
export type Standing = 'met' | 'close' | 'not-yet' | 'no-target' | 'missing';

/** One reading as the swimmer sees it. */
export interface HandoutReading {
  readonly label: string;
  readonly standing: Standing;
  /** The plain word: how it stands. */
  readonly word: string;
  /** "2.50 ± 0.03 Hz", or why it could not be measured. */
  readonly value: string;
  /** "Target 2.2 to 2.5 Hz"; empty without a target. */
  readonly target: string;
  /** What it means, one sentence. */
  readonly means: string;
  /** For the bar: value, interval and band, in the reading's unit; null without a target. */
  readonly bar: {
    readonly value: number;
    readonly low: number;
    readonly high: number;
    readonly bandLow: number | null;
    readonly bandHigh: number | null;
  } | null;
}

const standings: Readonly<Record<'yes' | 'no' | 'unsure', { standing: Standing; word: string }>> = {
  yes: { standing: 'met', word: handoutPageWords('target') },
  unsure: { standing: 'close', word: handoutPageWords('close') },
  no: { standing: 'not-yet', word: handoutPageWords('notYet') },
};

/**
 * A reading against the swimmer's target in plain words. "Close" means that the marks can't tell. Amounts of time and
 * way under water never stand against a target.
 */
export function handoutReading(
  definition: ReadingDefinition,
  reading: Reading | undefined,
  swimmer: Swimmer | null,
): HandoutReading {
  const { label, forSwimmer: means } = definition;
  if (reading?.status !== 'computed')
    return {
      label,
      standing: 'missing',
      word: handoutPageWords('notMeasured'),
      value: reading?.reasons[0] ? reasonWords(reading.reasons[0]) : '',
      target: '',
      means,
      bar: null,
    };
  const text = formatReading(reading, definition.digits);
  // its doubt is the card's own word
  const value = valueLine(text);
  // no target is met or missed by what may be wrong
  if (text.doubtful)
    return {
      label,
      standing: 'no-target',
      word: handoutPageWords(text.doubt === 'not reviewed' ? 'notReviewed' : 'doubtful'),
      value,
      target: '',
      means: reading.notes.includes('implausible-for-a-human')
        ? handoutPageWords('notWhatPerson')
        : handoutPageWords('checkBeforeCounts', { doubtsIn: doubtsInWords(reading).join('; ') }),
      bar: null,
    };
  const band = swimmer && !neverCompared(reading.id) ? targetInForce(swimmer, reading.id) : null;
  const mark = band ? targetMark(swimmer, reading.id, reading.value, reading.interval) : null;
  if (!band || !mark)
    return {
      label,
      standing: 'no-target',
      word: handoutPageWords('noTargetYet'),
      value,
      target: '',
      means,
      bar: null,
    };
  return {
    label,
    ...standings[mark.met],
    value,
    target: `Target ${bandWords(band.low, band.high)} ${text.unit}`.trim(),
    means,
    bar: {
      value: reading.value,
      low: reading.interval.low,
      high: reading.interval.high,
      bandLow: band.low,
      bandHigh: band.high,
    },
  };
}
