import type { BodyContext } from '../body/body-context';
import type { TimedEvent } from '../body/cycle-frame';
import { eventsOf } from './event-list';
import { fitPeriod, type Period } from './fit-period';
import { strokesOf } from './strokes';

export interface KickPeriod extends Period {
  /** Whole kicks between the marks used. */
  readonly cycles: number;
  /** Times of single kicks (in strokes: half of the time from a kick one to the next kick one). */
  readonly spans: readonly {
    readonly seconds: number;
    readonly fromFrame: number;
    readonly toFrame: number;
  }[];
  readonly eventIds: readonly string[];
}

/**
 * Period of one whole kick; null without two tops or two bottoms at different times.
 *
 * Where two strokes or more hold two kicks each, first and second kicks repeat once a stroke, each with an offset of
 * its own, so that f = 2 · SR / 60 holds however unevenly the two are spaced; kicks outside such strokes (under water
 * after the push-off, say) do not count then. Where kicks fall across the strokes' borders, so that they can't be
 * paired, but every stroke holds the same number, the stroke's period is shared out among them.
 */
export function kickPeriod(context: BodyContext): KickPeriod | null {
  const known = kept.get(context);
  if (known !== undefined) return known;
  const found = kicksInStrokes(context) ?? kicksAcrossStrokes(context) ?? kicksAlone(context);
  kept.set(context, found);
  return found;
}

const kept = new WeakMap<BodyContext, KickPeriod | null>();

/**
 * How far from a whole number the kicks of a stroke may be on average and still be that many in each; more by one mark
 * at the border of the first stroke or the last. Our default.
 */
const wholeWithin = (strokes: number): number => 0.15 + 0.5 / (2 * strokes);

function kicksAcrossStrokes(context: BodyContext): KickPeriod | null {
  const { cycles, events } = context;
  if (cycles?.base !== 'stroke' || cycles.spans.length < 2) return null;
  const kicks = events.filter(
    ({ event, time }) =>
      (event.kind === 'kick-top' || event.kind === 'kick-bottom') &&
      cycles.spans.some((span) => time >= span.start && time < span.end),
  );
  const each = kicks.length / (2 * cycles.spans.length);
  const number = Math.round(each);
  if (number < 2 || Math.abs(each - number) > wholeWithin(cycles.spans.length)) return null;
  return {
    seconds: cycles.period / number,
    variance: cycles.periodVariance / number ** 2,
    cycles: number * cycles.spans.length,
    spans: cycles.spans.map((span) => ({
      seconds: (span.end - span.start) / number,
      fromFrame: span.fromFrame,
      toFrame: span.toFrame,
    })),
    eventIds: [...cycles.eventIds, ...kicks.map(({ event }) => event.id)],
  };
}

function kicksInStrokes(context: BodyContext): KickPeriod | null {
  const strokes = strokesOf(context.events);
  const paired = strokes.filter((stroke) => stroke.kicks.length === 2);
  if (paired.length < 2 || 2 * paired.length < strokes.length) return null;
  const row = (kick: 0 | 1, end: 'top' | 'bottom'): TimedEvent[] =>
    paired.flatMap((stroke) => stroke.kicks[kick]?.[end] ?? []);
  const rows = [row(0, 'top'), row(0, 'bottom'), row(1, 'top'), row(1, 'bottom')];
  const stroke = fitPeriod(rows);
  if (!stroke || strayed(stroke.seconds, strokes.length, context)) return null;
  const spans = spansOf(rows, stroke.seconds);
  return {
    seconds: stroke.seconds / 2,
    variance: stroke.variance / 4,
    cycles: 2 * spans.length,
    spans: spans.map((each) => ({ ...each, seconds: each.seconds / 2 })),
    eventIds: rows.flat().map((each) => each.event.id),
  };
}

/**
 * Whether the kicks' stroke is not that of the hand entries: then kicks at the border of two strokes were paired now with
 * the one, now with the other. One kick taken for its neighbour in n strokes moves the period by 3/n² of a stroke at
 * least; less than half of that is the swimmer's own unevenness. Our default.
 */
function strayed(seconds: number, strokes: number, { cycles }: BodyContext): boolean {
  if (cycles?.base !== 'stroke') return false;
  return Math.abs(seconds - cycles.period) > (1.2 * cycles.period) / strokes ** 2;
}

function kicksAlone(context: BodyContext): KickPeriod | null {
  const rows = [eventsOf(context.events, 'kick-top'), eventsOf(context.events, 'kick-bottom')];
  const kick = fitPeriod(rows);
  if (!kick) return null;
  const spans = spansOf(rows, kick.seconds);
  const used = rows.filter((row) => row.length >= 2);
  return { ...kick, cycles: spans.length, spans, eventIds: used.flat().map((each) => each.event.id) };
}

/** Gaps of the longest row; one over one and a half periods holds a missed mark and is no single cycle. */
function spansOf(
  rows: readonly (readonly TimedEvent[])[],
  period: number,
): readonly KickPeriod['spans'][number][] {
  const longest = rows.reduce((most, row) => (row.length > most.length ? row : most), rows[0] ?? []);
  return longest.slice(1).flatMap((to, i) => {
    const from = longest[i];
    const seconds = from ? to.time - from.time : 0;
    return from && seconds <= 1.5 * period
      ? [{ seconds, fromFrame: from.event.frame, toFrame: to.event.frame }]
      : [];
  });
}
