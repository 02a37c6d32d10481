import type { BodyContext } from '../body/context/body-context';
import { computedReading, missingReading } from '../body/reading/measured-reading';
import { eventsOf } from '../events/event-list';
import { fitPeriod } from '../events/fit-period';
import { strokePlaces } from '../events/stroke-places';
import { strokeRow } from '../events/stroke-row';
import { strokesOf } from '../events/strokes';
import type { Reading, ReadingDefinition } from '../reading';
import { swimSpeed } from './swim-speed';
import { propulsionReadingsWords } from '../../words/propulsion-readings';

const ids = ['stroke-length', 'stroke-index'] as const;

/** Distance per stroke and stroke index, of clean swimming: distance marks before the breakout don't count. */
export function strokeProductReadings(context: BodyContext): readonly Reading[] {
  const typical = strokePlaces(context.events)?.typical;
  const hands = strokeRow(context.events, typical);
  const rhythm = fitPeriod([hands], typical);
  if (!rhythm) return ids.map((id) => missingReading(id, { code: 'needs-reading', reading: 'stroke-rate' }));
  const result = swimSpeed(context, eventsOf(context.events, 'breakout')[0]?.time);
  if (!result.ok) return ids.map((id) => missingReading(id, ...result.reasons));
  const { speed } = result;
  const length = speed.value * rhythm.seconds;
  const index = speed.value * length;
  const relativePeriod = rhythm.variance / rhythm.seconds ** 2;
  const shared = {
    cycles: strokesOf(context.events).length,
    frames: speed.frames,
    landmarks: speed.landmarks,
    eventIds: [...new Set([...hands.map((each) => each.event.id), ...speed.eventIds])],
    usesScale: speed.usesScale,
    notes: speed.notes,
  };
  return [
    computedReading(context, 'stroke-length', {
      ...shared,
      value: length,
      unit: speed.unit,
      ownVariance: (speed.own + relativePeriod) * length ** 2,
      sharedVariance: speed.shared * length ** 2,
    }),
    speed.unit === 'm'
      ? computedReading(context, 'stroke-index', {
          ...shared,
          value: index,
          unit: 'm²/s',
          // speed enters twice, so its error doubles
          ownVariance: (4 * speed.own + relativePeriod) * index ** 2,
          sharedVariance: 4 * speed.shared * index ** 2,
        })
      : missingReading('stroke-index', { code: 'needs-scene', item: 'scale' }),
  ];
}

export const strokeProductDefinitions: readonly ReadingDefinition[] = [
  {
    id: 'stroke-length',
    group: 'stroke',
    label: propulsionReadingsWords('strokeLength'),
    brief: propulsionReadingsWords('speedTimeOne'),
    definition: propulsionReadingsWords('distanceOneStroke'),
    forCoach: propulsionReadingsWords('howFarOneStroke'),
    forSwimmer: propulsionReadingsWords('howFarOneStrokeCarries'),
    source: propulsionReadingsWords('slUTCommonDefinition'),
    digits: 2,
  },
  {
    id: 'stroke-index',
    group: 'stroke',
    label: propulsionReadingsWords('strokeIndex'),
    brief: propulsionReadingsWords('speedStrokeLength'),
    definition: propulsionReadingsWords('meanSpeedTimesStroke'),
    forCoach: propulsionReadingsWords('speedLengthStroke'),
    forSwimmer: propulsionReadingsWords('whetherYouGo'),
    source: propulsionReadingsWords('siUSlCommonDefinition'),
    digits: 2,
  },
];
