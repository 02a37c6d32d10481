import type { EventMark } from '../../swim-file/swim-schema';

export interface TimedEvent {
  readonly event: EventMark;
  /** Real seconds. */
  readonly time: number;
  /** Variance of the time, s²: frame rounding and marking. */
  readonly variance: number;
}

export interface CycleSpan {
  readonly fromFrame: number;
  readonly toFrame: number;
  readonly start: number;
  readonly end: number;
}

/** The cycles that landmark readings are taken over. */
export interface CycleFrame {
  /** Strokes where hand entries mark them, else kicks. */
  readonly base: 'stroke' | 'kick';
  readonly spans: readonly CycleSpan[];
  /** Mean period, seconds, and its variance. */
  readonly period: number;
  readonly periodVariance: number;
  /** Which harmonic of the base is the kick: 1 for kicks; for strokes the number of kicks in one. */
  readonly kickHarmonic: number;
  readonly eventIds: readonly string[];
}

interface Rhythm {
  readonly period: number;
  readonly variance: number;
}

/**
 * Common period of one or two rows of events (tops and bottoms, say) with offsets of their own, by least squares of
 * time on whole cycle numbers. A missed mark leaves a hole in the numbers, not a long cycle. Null when no row has two
 * events at different times.
 */
export function commonPeriod(rows: readonly (readonly TimedEvent[])[]): Rhythm | null {
  const gaps = rows.flatMap((row) => row.slice(1).map((e, i) => e.time - (row[i]?.time ?? e.time)));
  const positive = gaps.filter((g) => g > 0).sort((a, b) => a - b);
  const typical = positive[(positive.length - 1) >> 1];
  if (typical === undefined) return null;
  let nn = 0;
  let nt = 0;
  const spread: { centred: number; variance: number }[] = [];
  for (const row of rows) {
    const first = row[0];
    if (!first || row.length < 2) continue;
    const numbers: number[] = [0];
    for (let i = 1; i < row.length; i++) {
      const gap = (row[i]?.time ?? 0) - (row[i - 1]?.time ?? 0);
      numbers.push((numbers[i - 1] ?? 0) + Math.max(1, Math.round(gap / typical)));
    }
    const mean = numbers.reduce((sum, n) => sum + n, 0) / numbers.length;
    row.forEach((e, i) => {
      const centred = (numbers[i] ?? 0) - mean;
      nn += centred * centred;
      nt += centred * (e.time - first.time);
      spread.push({ centred, variance: e.variance });
    });
  }
  const period = nt / nn;
  if (!(period > 0)) return null;
  const variance = spread.reduce((sum, s) => sum + s.centred ** 2 * s.variance, 0) / (nn * nn);
  return { period, variance };
}

/** The events that cycles are made of, in the order given. */
export function cycleEvents(events: readonly TimedEvent[]): readonly TimedEvent[] {
  return events.filter(
    ({ event }) => event.kind === 'entry' || event.kind === 'kick-top' || event.kind === 'kick-bottom',
  );
}

/**
 * Cycles for landmark readings: strokes, hand entry to hand entry, when the swim has two entries or more; else kicks,
 * between events of the commoner of kick top and kick bottom. A gap of more than one and a half periods is a missed
 * mark and gives no cycle. Null without two entries and without two tops or two bottoms.
 */
export function cycleFrame(events: readonly TimedEvent[]): CycleFrame | null {
  const of = (kind: EventMark['kind']): TimedEvent[] => {
    const sorted = events.filter((e) => e.event.kind === kind).sort((a, b) => a.time - b.time);
    return sorted.filter((e, i) => i === 0 || e.time > (sorted[i - 1]?.time ?? 0));
  };
  const tops = of('kick-top');
  const bottoms = of('kick-bottom');
  const kick = commonPeriod([tops, bottoms]);
  const entries = of('entry');
  const stroke = commonPeriod([entries]);
  if (stroke) {
    const kicks = kick ? Math.max(1, Math.round(stroke.period / kick.period)) : 2;
    return framed('stroke', entries, stroke, kicks);
  }
  if (!kick) return null;
  return framed('kick', bottoms.length > tops.length ? bottoms : tops, kick, 1);
}

function framed(
  base: 'stroke' | 'kick',
  bounds: readonly TimedEvent[],
  rhythm: Rhythm,
  kickHarmonic: number,
): CycleFrame {
  const spans = bounds.slice(1).flatMap((to, i) => {
    const from = bounds[i];
    if (!from || to.time - from.time > 1.5 * rhythm.period) return [];
    return [{ fromFrame: from.event.frame, toFrame: to.event.frame, start: from.time, end: to.time }];
  });
  return {
    base,
    spans,
    period: rhythm.period,
    periodVariance: rhythm.variance,
    kickHarmonic,
    eventIds: bounds.map((e) => e.event.id),
  };
}
