import type { BodyContext } from '../body/body-context';
import { computedReading, missingReading } from '../body/measured-reading';
import type { Reading, ReadingDefinition } from '../reading';
import { eventsOf } from './event-list';
import { kickPeriod } from './kick-period';

/**
 * Standard deviation of a pool mark's own distance, metres: 1 cm. Our default, no source; with it a speed never claims
 * that the pool was measured without error.
 */
const markSd = 0.01;

/** Mean speed between the first and last distance mark, and the distance each kick brings at that speed. */
export function markedSpeedReadings(context: BodyContext): readonly Reading[] {
  const marks = eventsOf(context.events, 'distance-mark').filter((each) => each.event.metres !== null);
  const first = marks[0];
  const last = marks.at(-1);
  if (!first || !last || marks.length < 2) {
    const reason = { code: 'needs-events', kind: 'distance-mark', have: marks.length, need: 2 } as const;
    return [missingReading('speed-marks', reason), missingReading('distance-per-kick-marks', reason)];
  }
  const time = last.time - first.time;
  const metres = Math.abs((last.event.metres ?? 0) - (first.event.metres ?? 0));
  if (metres === 0) {
    const reason = { code: 'degenerate', what: 'zero-length' } as const;
    return [missingReading('speed-marks', reason), missingReading('distance-per-kick-marks', reason)];
  }
  const speed = metres / time;
  const relative = (first.variance + last.variance) / time ** 2 + (2 * markSd ** 2) / metres ** 2;
  const eventIds = [first.event.id, last.event.id];
  const found = computedReading(context, 'speed-marks', {
    value: speed,
    unit: 'm/s',
    ownVariance: relative * speed ** 2,
    cycles: 0,
    frames: [],
    eventIds,
    usesScale: false,
  });
  const rhythm = kickPeriod(context);
  if (!rhythm)
    return [
      found,
      missingReading('distance-per-kick-marks', { code: 'needs-reading', reading: 'kick-frequency' }),
    ];
  const distance = speed * rhythm.seconds;
  return [
    found,
    computedReading(context, 'distance-per-kick-marks', {
      value: distance,
      unit: 'm',
      ownVariance: (relative + rhythm.variance / rhythm.seconds ** 2) * distance ** 2,
      cycles: rhythm.cycles,
      frames: [],
      eventIds: [...eventIds, ...rhythm.eventIds],
      usesScale: false,
    }),
  ];
}

export const markedSpeedDefinitions: readonly ReadingDefinition[] = [
  {
    id: 'speed-marks',
    group: 'speed',
    label: 'Speed between distance marks',
    brief: 'first to last mark',
    definition:
      'Metres between the first and the last distance mark divided by the time between them. Needs no scale.',
    forCoach: 'Mean speed over a measured stretch; the pool does the measuring.',
    forSwimmer: 'How fast you went from one mark to the other.',
    source: 'Our own definition.',
    digits: 2,
  },
  {
    id: 'distance-per-kick-marks',
    group: 'speed',
    label: 'Distance per kick between marks',
    brief: 'speed between marks ÷ kick frequency',
    definition: 'Speed between distance marks times the time of one whole kick.',
    forCoach: 'How far one kick carries the swimmer.',
    forSwimmer: 'How far one kick carries you.',
    source: 'd = U / f; common definition.',
    digits: 2,
  },
];
