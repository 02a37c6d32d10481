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
 * after the push-off, say) do not count then.
 */
export function kickPeriod(context: BodyContext): KickPeriod | null {
  return kicksInStrokes(context) ?? kicksAlone(context);
}

function kicksInStrokes(context: BodyContext): KickPeriod | null {
  const strokes = strokesOf(context.events);
  const paired = strokes.filter((stroke) => stroke.kicks.length === 2);
  if (paired.length < 2 || 2 * paired.length < strokes.length) return null;
  const row = (kick: 0 | 1, end: 'top' | 'bottom'): TimedEvent[] =>
    paired.flatMap((stroke) => stroke.kicks[kick]?.[end] ?? []);
  const rows = [row(0, 'top'), row(0, 'bottom'), row(1, 'top'), row(1, 'bottom')];
  const stroke = fitPeriod(rows);
  if (!stroke) return null;
  const spans = spansOf(rows, stroke.seconds);
  return {
    seconds: stroke.seconds / 2,
    variance: stroke.variance / 4,
    cycles: 2 * spans.length,
    spans: spans.map((each) => ({ ...each, seconds: each.seconds / 2 })),
    eventIds: rows.flat().map((each) => each.event.id),
  };
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
