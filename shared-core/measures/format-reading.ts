import { type Doubted, doubtWord, isDoubtful } from './doubtful';
import type { ComputedReading, Interval, ReadingUnit } from './reading';
import { measuresWords } from '../words/measures';

const unitWords: Readonly<Record<ReadingUnit, string>> = {
  Hz: 'Hz',
  '1/min': '/min',
  s: 's',
  ms: 'ms',
  '%': '%',
  m: 'm',
  L: 'L',
  px: 'px',
  '%L': '% L',
  'm/s': 'm/s',
  'L/s': 'L/s',
  'px/s': 'px/s',
  '°': '°',
  count: '',
  ratio: '',
  'm²/s': 'm²/s',
};

/**
 * Digits that the interval earns: its half-width shown to two figures when it starts with 1 or 2, else to one; so
 * the value says no more than the marks can. Between 0 and 4.
 */
export function earnedDigits(half: number, fallback: number): number {
  if (!(half > 0) || !Number.isFinite(half)) return fallback;
  const magnitude = Math.floor(Math.log10(half));
  const leading = half / 10 ** magnitude;
  const digits = leading < 3 ? 1 - magnitude : -magnitude;
  return Math.max(0, Math.min(4, digits));
}

/** Readings whose sign is their message; a plus is then printed too. */
const signedIds = /^(kick[12]-|gap-t[1-4]|trunk-pitch|head-offset|hip-height|knee-to-surface|feet-direction)/;

function number(value: number, digits: number, plus: boolean): string {
  const text = Math.abs(value).toFixed(digits);
  const zero = Number(text) === 0;
  if (zero) return text;
  return `${value < 0 ? '−' : plus ? '+' : ''}${text}`;
}

/** What of a reading is printed, doubt and all; a whole reading is one too. */
export type PrintedReading = Pick<ComputedReading, 'id' | 'value' | 'unit'> &
  Doubted & { readonly interval: Pick<Interval, 'low' | 'high'> };

export interface ReadingText {
  readonly value: string;
  /** Half the 95 % interval, or both ends when it leans to one side. */
  readonly spread: string;
  readonly unit: string;
  /** Must be said beside the number; `readingLine` does. */
  readonly doubtful: boolean;
  /** The word to say. */
  readonly doubt: ReturnType<typeof doubtWord>;
}

/** A reading as it is printed: value, ± 95 %, unit. Lopsided intervals print both ends. */
export function formatReading(reading: PrintedReading, fallbackDigits: number): ReadingText {
  const { value, interval, unit } = reading;
  const below = value - interval.low;
  const above = interval.high - value;
  const half = (interval.high - interval.low) / 2;
  const digits = earnedDigits(half, fallbackDigits);
  const plus = signedIds.test(reading.id);
  const lopsided = half > 0 && Math.abs(above - below) > 0.3 * half;
  return {
    value: number(value, digits, plus),
    spread: lopsided
      ? measuresWords('to', {
          number: number(interval.low, digits, plus),
          number2: number(interval.high, digits, plus),
        })
      : `± ${half.toFixed(digits)}`,
    unit: unitWords[unit],
    doubtful: isDoubtful(reading),
    doubt: doubtWord(reading),
  };
}

/** A number with its interval: "1.24 ± 0.05 m/s", or "5.6 (4.8 to 6.6) m/s". Only where its doubt is said beside it. */
export function valueLine({ value, spread, unit }: ReadingText): string {
  return `${value} ${spread.startsWith('±') ? spread : `(${spread})`} ${unit}`.trim();
}

/** A printed reading as one line of words, doubt and all: "1.24 ± 0.05 m/s", "0.42 ± 0.01 Hz, doubtful". */
export function readingLine(text: ReadingText): string {
  if (!text.doubtful) return valueLine(text);
  return measuresWords(text.doubt === 'not reviewed' ? 'notReviewed' : 'doubtful', {
    valueLine: valueLine(text),
  });
}
