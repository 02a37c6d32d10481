import type { BodyContext } from '../body/context/body-context';
import { computedReading, missingReading } from '../body/reading/measured-reading';
import type { MissingReason, Reading, ReadingDefinition } from '../reading';
import { eventsOf } from './event-list';
import { strokesOf } from './strokes';
import { wholeNumberVariance } from './whole-number';
import { rhythmReadingsWords } from '../../words/rhythm-readings';

/** Strokes of the length, and strokes per breath. */
export function strokeCountReadings(context: BodyContext): readonly Reading[] {
  return [strokeCount(context), breathing(context)];
}

function strokeCount(context: BodyContext): Reading {
  const id = 'stroke-count';
  const touch = eventsOf(context.events, 'touch').at(-1);
  const start = [...eventsOf(context.events, 'push-off'), ...eventsOf(context.events, 'breakout')].sort(
    (a, b) => a.time - b.time,
  )[0];
  const reasons: MissingReason[] = [];
  // without both ends the marks may be a part of the length
  if (!start) reasons.push({ code: 'needs-events', kind: 'push-off', have: 0, need: 1 });
  if (!touch) reasons.push({ code: 'needs-events', kind: 'touch', have: 0, need: 1 });
  if (!start || !touch) return missingReading(id, ...reasons);
  const entries = eventsOf(context.events, 'entry').filter(
    (each) => each.time > start.time && each.time < touch.time,
  );
  if (entries.length === 0)
    return missingReading(id, { code: 'needs-events', kind: 'entry', have: 0, need: 1 });
  return computedReading(context, id, {
    value: entries.length,
    unit: 'count',
    ownVariance: wholeNumberVariance,
    cycles: entries.length,
    frames: [],
    eventIds: [start, ...entries, touch].map((each) => each.event.id),
  });
}

function breathing(context: BodyContext): Reading {
  const id = 'breathing-every';
  const strokes = strokesOf(context.events);
  const breathed = strokes.filter((stroke) => stroke.breath);
  const entries = eventsOf(context.events, 'entry').length;
  if (strokes.length === 0)
    return missingReading(id, { code: 'needs-events', kind: 'entry', have: entries, need: 2 });
  if (breathed.length === 0)
    return missingReading(id, { code: 'needs-events', kind: 'breath', have: 0, need: 1 });
  return computedReading(context, id, {
    value: strokes.length / breathed.length,
    unit: 'count',
    ownVariance: wholeNumberVariance / breathed.length ** 2,
    cycles: strokes.length,
    frames: [],
    eventIds: [
      ...new Set([
        ...strokes.flatMap((stroke) => [stroke.entry.event.id, stroke.next.event.id]),
        ...breathed.flatMap((stroke) => stroke.breath?.event.id ?? []),
      ]),
    ],
  });
}

export const strokeCountDefinitions: readonly ReadingDefinition[] = [
  {
    id: 'stroke-count',
    group: 'stroke',
    label: rhythmReadingsWords('strokesLength'),
    brief: rhythmReadingsWords('handEntriesBreakout'),
    definition: rhythmReadingsWords('handEntriesMarked'),
    forCoach: rhythmReadingsWords('countSwimmerCan'),
    forSwimmer: rhythmReadingsWords('howManyStrokes'),
    source: rhythmReadingsWords('commonPracticeNo'),
    digits: 0,
  },
  {
    id: 'breathing-every',
    group: 'stroke',
    label: rhythmReadingsWords('breathingPattern'),
    brief: rhythmReadingsWords('strokesPerBreath'),
    definition: rhythmReadingsWords('wholeStrokesMarked'),
    forCoach: rhythmReadingsWords('whichBreathingPattern'),
    forSwimmer: rhythmReadingsWords('howManyStrokesYou'),
    source: rhythmReadingsWords('ourOwnDefinition'),
    digits: 1,
  },
];
