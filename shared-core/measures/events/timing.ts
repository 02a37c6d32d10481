import type { SwimCard } from '../../swim-file/swim-schema';
import {
  absolute,
  difference,
  mean,
  quotient,
  scaled,
  sum,
  type Tracked,
  trackedVariance,
} from '../../uncertainty/tracked';
import type { BodyContext } from '../body/context/body-context';
import { missingReading } from '../body/reading/measured-reading';
import type { MissingReason, Reading, ReadingNote } from '../reading';
import { eventsOf } from './event-list';
import {
  type GapKind,
  gapKinds,
  gapMilliseconds,
  gapPercent,
  legEvent,
  shareSpanned,
  spanned,
  strokeTime,
  usualStray,
} from './gaps';
import { phaseKinds } from './phases';
import { type Stroke, timedStrokes } from './strokes';
import { strokePlaces } from './stroke-places';
import {
  markVariances,
  meanReading,
  timeOf,
  type TrackedCycle,
  trackedReading,
  type Unmarked,
} from './tracked-reading';

/** The four gaps are of the full stroke with two kicks; one-arm and kicking drills are not comparable. */
function fullStroke(card: SwimCard): boolean {
  return card.stroke === 'butterfly' && card.arms === 'stroking';
}

/** Kick and hands: offsets, four gaps in ms and %, their total, and the phases of the stroke. */
export function timingReadings(context: BodyContext): readonly Reading[] {
  const strokes = timedStrokes(context.events);
  const uneven = strokes.some((stroke) => stroke.kicks.length !== 2);
  const notes: readonly ReadingNote[] = uneven ? ['kick-pairing-uneven'] : [];
  const drill = !fullStroke(context.input.swim.card);
  const offsets = gapKinds.flatMap((kind) => {
    if (drill && kind.id.startsWith('gap-'))
      return [kind.id, `${kind.id}-percent`].map((id) => missingReading(id, { code: 'not-for-this-drill' }));
    const reasons = gapReasons(context, strokes, kind);
    const of = (measure: (stroke: Stroke, kind: GapKind) => TrackedCycle | null): TrackedCycle[] =>
      strokes.flatMap((stroke) => measure(stroke, kind) ?? []);
    return [
      meanReading(context, kind.id, 'ms', of(gapMilliseconds), reasons, notes, unmarked(context, 'ms')),
      meanReading(context, `${kind.id}-percent`, '%', of(gapPercent), reasons, notes, unmarked(context, '%')),
    ];
  });
  return [
    ...offsets,
    ...splitGaps(context, strokes, drill, notes),
    ...totals(context, strokes, drill, notes),
    ...phaseReadings(context, strokes),
  ];
}

function gapReasons(
  context: BodyContext,
  strokes: readonly Stroke[],
  kind: GapKind,
): readonly MissingReason[] {
  const entries = eventsOf(context.events, 'entry').length;
  if (entries < 2) return [{ code: 'needs-events', kind: 'entry', have: entries, need: 2 }];
  const reasons: MissingReason[] = strokes.every(({ outOfOrder }) => outOfOrder.length > 0)
    ? [...disorderOf(strokes)]
    : [];
  const hands = eventsOf(context.events, kind.hand).length;
  if (hands === 0) reasons.push({ code: 'needs-events', kind: kind.hand, have: hands, need: 1 });
  const legs = eventsOf(context.events, legEvent(kind)).length;
  const tops = eventsOf(context.events, 'kick-top').length;
  if (legs < 2) reasons.push({ code: 'needs-events', kind: legEvent(kind), have: legs, need: 2 });
  else if (tops < 2) reasons.push({ code: 'needs-events', kind: 'kick-top', have: tops, need: 2 });
  if (reasons.length === 0)
    reasons.push({
      code: 'needs-full-cycles',
      have: strokes.filter((stroke) => stroke.kicks.length === 2).length,
      need: 1,
    });
  return reasons;
}

/** The refusal for strokes whose hand marks are out of order; none where all are in order. */
function disorderOf(strokes: readonly Stroke[]): readonly MissingReason[] {
  const marks = strokes.flatMap(({ outOfOrder }) => outOfOrder);
  if (marks.length === 0) return [];
  const frames = marks.map(({ event }) => event.frame);
  return [{ code: 'marks-contradict', what: 'hands-out-of-order', frames }];
}

/** Strokes that a mean over strokes is to stand for: as many as the hand marks span, less `others` not meant. */
function unmarked({ events }: BodyContext, unit: 'ms' | '%', others = 0): Unmarked | null {
  const places = strokePlaces(events);
  if (!places) return null;
  return {
    cycles: places.strokes - others,
    usualSd: usualStray * (unit === '%' ? 100 : 1000 * places.typical),
  };
}

const fourGaps = gapKinds.filter((kind) => kind.id.startsWith('gap-'));

const breathes = (stroke: Stroke): boolean => stroke.breath !== null;

/** The four gaps of breathing strokes and of others apart, in ms and in percent of the stroke. */
function splitGaps(
  context: BodyContext,
  strokes: readonly Stroke[],
  drill: boolean,
  notes: readonly ReadingNote[],
): readonly Reading[] {
  return fourGaps.flatMap((kind) =>
    (['breathing', 'not-breathing'] as const).flatMap((split) => {
      const ids = [`${kind.id}-${split}`, `${kind.id}-${split}-percent`] as const;
      if (drill) return ids.map((id) => missingReading(id, { code: 'not-for-this-drill' }));
      const chosen = strokes.filter((stroke) => breathes(stroke) === (split === 'breathing'));
      const reasons = splitReasons(context, strokes, kind, split);
      const among = (unit: 'ms' | '%'): Unmarked | null =>
        unmarked(context, unit, strokes.length - chosen.length);
      const of = (measure: (stroke: Stroke, kind: GapKind) => TrackedCycle | null): TrackedCycle[] =>
        chosen.flatMap((stroke) => measure(stroke, kind) ?? []);
      return [
        meanReading(context, ids[0], 'ms', of(gapMilliseconds), reasons, notes, among('ms')),
        meanReading(context, ids[1], '%', of(gapPercent), reasons, notes, among('%')),
      ];
    }),
  );
}

/** Why a gap of breathing strokes, or of others, is not there: no breath is marked, or something of the gap. */
function splitReasons(
  context: BodyContext,
  strokes: readonly Stroke[],
  kind: GapKind,
  split: 'breathing' | 'not-breathing',
): readonly MissingReason[] {
  const breaths = eventsOf(context.events, 'breath').length;
  return split === 'breathing' && breaths === 0
    ? [{ code: 'needs-events', kind: 'breath', have: 0, need: 1 }]
    : gapReasons(context, strokes, kind);
}

/** Sum of the sizes of the mean gaps, over all strokes and over breathing and other strokes apart. */
function totals(
  context: BodyContext,
  strokes: readonly Stroke[],
  drill: boolean,
  notes: readonly ReadingNote[],
): readonly Reading[] {
  const chosen: readonly (readonly [string, (stroke: Stroke) => boolean])[] = [
    ['gap-total-percent', () => true],
    ['gap-total-breathing-percent', breathes],
    ['gap-total-not-breathing-percent', (stroke) => !breathes(stroke)],
  ];
  return chosen.map(([id, wanted]) => {
    if (drill) return missingReading(id, { code: 'not-for-this-drill' });
    const cycles: TrackedCycle[] = [];
    const full: Tracked[][] = [];
    for (const stroke of strokes.filter(wanted)) {
      const gaps = fourGaps.flatMap((kind) => gapPercent(stroke, kind)?.value ?? []);
      if (gaps.length < fourGaps.length) continue;
      full.push(gaps);
      const total = gaps.reduce((all, gap) => all + Math.abs(gap.value), 0);
      // the marks are those of the mean gaps below
      cycles.push(spanned(stroke, { value: total, slopes: new Map() }));
    }
    const missing = fourGaps.flatMap((kind) => gapReasons(context, strokes, kind));
    const breaths = eventsOf(context.events, 'breath').length;
    const reasons: readonly MissingReason[] =
      id === 'gap-total-breathing-percent' && breaths === 0
        ? [{ code: 'needs-events', kind: 'breath', have: 0, need: 1 }]
        : missing;
    const means = fourGaps.flatMap((_, i) => mean(full.flatMap((gaps) => gaps[i] ?? [])) ?? []);
    if (means.length < fourGaps.length) return missingReading(id, ...reasons);
    const sizes = means.map((gap) => sizeOf(gap, Math.sqrt(trackedVariance(gap, markVariances(context)))));
    return trackedReading(context, id, '%', sum(sizes), cycles, notes, false);
  });
}

/**
 * Size of a gap without its sign. Marking error alone makes the size of a gap near zero look larger, by
 * 2s·φ(x/s) − 2x·Φ(−x/s) for a true size x and a standard deviation s (mean of the folded normal); that is taken off.
 *
 * @see Leone, Nelson, Nottingham 1961, Technometrics 3:543–550 (from memory; the formula is checked by simulation)
 */
function sizeOf(gap: Tracked, sd: number): Tracked {
  const size = absolute(gap);
  if (!(sd > 0)) return size;
  const z = size.value / sd;
  const lift = 2 * sd * (Math.exp(-(z * z) / 2) / Math.sqrt(2 * Math.PI) - z * normalTail(z));
  return { value: Math.max(0, size.value - lift), slopes: size.slopes };
}

/** Share of a standard normal above z ≥ 0, within 7.5e-8. @see Abramowitz & Stegun 26.2.17 */
function normalTail(z: number): number {
  const t = 1 / (1 + 0.231_641_9 * z);
  const series =
    t *
    (0.319_381_53 + t * (-0.356_563_782 + t * (1.781_477_937 + t * (-1.821_255_978 + t * 1.330_274_429))));
  return (series * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI);
}

function phaseReadings(context: BodyContext, strokes: readonly Stroke[]): readonly Reading[] {
  const inOrder = strokes.filter(({ outOfOrder }) => outOfOrder.length === 0);
  const disorder = disorderOf(strokes);
  return phaseKinds.map((phase) => {
    const cycles = inOrder.flatMap((stroke) => {
      const from = stroke[phase.from];
      const to = stroke[phase.to];
      const share =
        from && to && !from.put && !to.put
          ? quotient(difference(timeOf(to), timeOf(from)), strokeTime(stroke))
          : null;
      return share ? [shareSpanned(stroke, scaled(100, share))] : [];
    });
    const entries = eventsOf(context.events, 'entry').length;
    const reasons: MissingReason[] = inOrder.length === 0 ? [...disorder] : [];
    if (entries < 2) reasons.push({ code: 'needs-events', kind: 'entry', have: entries, need: 2 });
    for (const end of [phase.from, phase.to])
      if (end !== 'next' && end !== 'entry' && !strokes.some((stroke) => stroke[end]))
        reasons.push({
          code: 'needs-events',
          kind: end,
          have: eventsOf(context.events, end).length,
          need: 1,
        });
    if (reasons.length === 0) reasons.push({ code: 'needs-full-cycles', have: 0, need: 1 });
    return meanReading(context, phase.id, '%', cycles, reasons, [], unmarked(context, '%'));
  });
}
