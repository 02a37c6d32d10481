import { keptWith } from '../../units/kept-with';
import type { BodyContext } from '../body/context/body-context';
import type { TimedEvent } from '../timed-event';
import { eventsOf } from './event-list';
import { fitPeriod, type Period } from './fit-period';
import { strokePlaces } from './stroke-places';
import { usualKick } from './usual-kick';

export interface KickPeriod extends Period {
  /** Whole kicks between the marks used. */
  readonly cycles: number;
  /** Times of single kicks (in strokes: a stroke shared out among its kicks). */
  readonly spans: readonly {
    readonly seconds: number;
    readonly fromFrame: number;
    readonly toFrame: number;
  }[];
  readonly eventIds: readonly string[];
}

/**
 * Period of one whole kick; null where marks give none.
 *
 * Where kicks are marked among strokes, each kick of the stroke repeats once a stroke with an offset of its own, so that
 * f = kicks · SR / 60 holds however unevenly they are spaced; kicks outside strokes (under water after the push-off, say)
 * do not count then.
 */
export const kickPeriod: (context: BodyContext) => KickPeriod | null = keptWith(
  (context) => kicksInStrokes(context) ?? kicksAlone(context),
);

function kicksInStrokes({ cycles, events }: BodyContext): KickPeriod | null {
  const strokes = strokePlaces(events);
  if (!strokes || strokes.marks.length === 0) return null;
  const number = cycles?.base === 'stroke' ? cycles.kickHarmonic : strokes.feet?.kicks;
  if (number === undefined) return null;
  const rows = strokes.feet?.places.map(({ marks }) => marks) ?? [];
  const own = fitPeriod(rows, strokes.typical);
  const stroke =
    own ?? (cycles?.base === 'stroke' ? { seconds: cycles.period, variance: cycles.periodVariance } : null);
  if (!stroke) return null;
  const spans = own ? spansOf(rows, stroke.seconds) : (cycles?.spans ?? []).map(spanned);
  return {
    seconds: stroke.seconds / number,
    variance: stroke.variance / number ** 2,
    cycles: Math.max(1, number * spans.length),
    spans: spans.map((each) => ({ ...each, seconds: each.seconds / number })),
    eventIds: [
      ...(own ? [] : (cycles?.eventIds ?? [])),
      ...(own ? rows.flat() : strokes.marks).map((each) => each.event.id),
    ],
  };
}

const spanned = (span: { start: number; end: number; fromFrame: number; toFrame: number }) => ({
  seconds: span.end - span.start,
  fromFrame: span.fromFrame,
  toFrame: span.toFrame,
});

function kicksAlone(context: BodyContext): KickPeriod | null {
  const rows = [eventsOf(context.events, 'kick-top'), eventsOf(context.events, 'kick-bottom')];
  const usual = usualKick(rows[0] ?? [], rows[1] ?? []);
  const marked = usual === null ? null : fitPeriod(rows, usual);
  if (!marked) return null;
  // where the toes show more kicks than are marked, the cycles have them
  const { cycles } = context;
  const toldByToes = cycles?.base === 'kick' && cycles.kicksToldBy === 'toes';
  const each = toldByToes ? Math.max(1, Math.round(marked.seconds / cycles.period)) : 1;
  const kick = { seconds: marked.seconds / each, variance: marked.variance / each ** 2 };
  const spans = spansOf(rows, marked.seconds).map((span) => ({ ...span, seconds: span.seconds / each }));
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
