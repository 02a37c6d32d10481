import type { SwimCard } from '../../swim-file/swim-schema';
import { absolute, difference, quotient, scaled, sum } from '../../uncertainty/tracked';
import type { BodyContext } from '../body/body-context';
import { missingReading } from '../body/measured-reading';
import type { MissingReason, Reading, ReadingNote } from '../reading';
import { eventsOf } from './event-list';
import { type GapKind, gapKinds, gapMilliseconds, gapPercent, legEvent, spanned, strokeTime } from './gaps';
import { phaseKinds } from './phases';
import { type Stroke, strokesOf } from './strokes';
import { meanReading, timeOf, type TrackedCycle } from './tracked-reading';

/** The four gaps are of the full stroke with two kicks; one-arm and kicking drills are not comparable. */
function fullStroke(card: SwimCard): boolean {
  return card.stroke === 'butterfly' && card.arms === 'stroking';
}

/** Kick and hands: offsets, four gaps in ms and %, their total, and the phases of the stroke. */
export function timingReadings(context: BodyContext): readonly Reading[] {
  const strokes = strokesOf(context.events);
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
      meanReading(context, kind.id, 'ms', of(gapMilliseconds), reasons, notes),
      meanReading(context, `${kind.id}-percent`, '%', of(gapPercent), reasons, notes),
    ];
  });
  return [...offsets, ...totals(context, strokes, drill, notes), ...phaseReadings(context, strokes)];
}

function gapReasons(
  context: BodyContext,
  strokes: readonly Stroke[],
  kind: GapKind,
): readonly MissingReason[] {
  const entries = eventsOf(context.events, 'entry').length;
  if (entries < 2) return [{ code: 'needs-events', kind: 'entry', have: entries, need: 2 }];
  const reasons: MissingReason[] = [];
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

const fourGaps = gapKinds.filter((kind) => kind.id.startsWith('gap-'));

/** Sum of the absolute gaps, over all strokes and over breathing and other strokes apart. */
function totals(
  context: BodyContext,
  strokes: readonly Stroke[],
  drill: boolean,
  notes: readonly ReadingNote[],
): readonly Reading[] {
  const chosen: readonly (readonly [string, (stroke: Stroke) => boolean])[] = [
    ['gap-total-percent', () => true],
    ['gap-total-breathing-percent', (stroke) => stroke.breath !== null],
    ['gap-total-not-breathing-percent', (stroke) => stroke.breath === null],
  ];
  return chosen.map(([id, wanted]) => {
    if (drill) return missingReading(id, { code: 'not-for-this-drill' });
    const cycles = strokes.filter(wanted).flatMap((stroke) => {
      const gaps = fourGaps.flatMap((kind) => gapPercent(stroke, kind)?.value ?? []);
      return gaps.length === fourGaps.length ? [spanned(stroke, sum(gaps.map(absolute)))] : [];
    });
    const missing = fourGaps.flatMap((kind) => gapReasons(context, strokes, kind));
    const breaths = eventsOf(context.events, 'breath').length;
    const reasons: readonly MissingReason[] =
      id === 'gap-total-breathing-percent' && breaths === 0
        ? [{ code: 'needs-events', kind: 'breath', have: 0, need: 1 }]
        : missing;
    return meanReading(context, id, '%', cycles, reasons, notes);
  });
}

function phaseReadings(context: BodyContext, strokes: readonly Stroke[]): readonly Reading[] {
  return phaseKinds.map((phase) => {
    const cycles = strokes.flatMap((stroke) => {
      const from = stroke[phase.from];
      const to = stroke[phase.to];
      const share = from && to ? quotient(difference(timeOf(to), timeOf(from)), strokeTime(stroke)) : null;
      return share ? [spanned(stroke, scaled(100, share))] : [];
    });
    const entries = eventsOf(context.events, 'entry').length;
    const reasons: MissingReason[] = [];
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
    return meanReading(context, phase.id, '%', cycles, reasons);
  });
}
