import type { EventKind } from '../../marks/event-kind';
import type { LandmarkName } from '../../marks/landmark';
import type { Reading, ReadingDefinition } from '../reading';
import type { BodyContext } from './body-context';
import { pointAt } from './body-geometry';
import { computedReading, missingReading, unitPart, z95 } from './measured-reading';
import { notFromSide } from './side-view';

const id = 'underwater-distance-scale';

/** World Aquatics swimming rules (SW): the head must break the surface by 15 m in butterfly and backstroke. */
const ruleMetres = 15;

/** Distance of the underwater part read off the picture: toes at push-off to head at breakout. */
export function underwaterDistanceReadings(context: BodyContext): readonly Reading[] {
  const view = notFromSide(context);
  if (view) return [missingReading(id, view)];
  if (!context.transform.travelKnown) return [missingReading(id, { code: 'needs-scene', item: 'travel' })];
  if (context.unit !== 'm') return [missingReading(id, { code: 'needs-scene', item: 'scale' })];
  const wall = place(context, 'push-off', 'toe');
  const head = place(context, 'breakout', 'ear');
  if (wall.status === 'missing') return [wall.reading];
  if (head.status === 'missing') return [head.reading];
  const value = head.x - wall.x;
  if (!(value > 0)) return [missingReading(id, { code: 'degenerate', what: 'zero-length' })];
  const part = unitPart(context, value);
  const marks = wall.variance + head.variance;
  const sd = Math.sqrt(marks + part.own + part.shared);
  return [
    computedReading(context, id, {
      value,
      unit: 'm',
      ownVariance: marks + part.own,
      sharedVariance: part.shared,
      cycles: 0,
      frames: [wall.frame, head.frame],
      landmarks: ['toe', 'ear'],
      eventIds: [wall.eventId, head.eventId],
      usesLevel: true,
      usesTravel: true,
      notes: value > ruleMetres - z95 * sd ? ['beyond-15-m'] : [],
    }),
  ];
}

type Place =
  | {
      readonly status: 'found';
      readonly x: number;
      readonly frame: number;
      readonly eventId: string;
      readonly variance: number;
    }
  | { readonly status: 'missing'; readonly reading: Reading };

function place(context: BodyContext, kind: EventKind, landmark: LandmarkName): Place {
  const event = context.events.find((e) => e.event.kind === kind)?.event;
  if (!event) {
    return {
      status: 'missing',
      reading: missingReading(id, { code: 'needs-events', kind, have: 0, need: 1 }),
    };
  }
  const posture = context.postureAt(event.frame);
  const point = posture && pointAt(context.columns[landmark], posture.place);
  if (!posture || !point) {
    return {
      status: 'missing',
      reading: missingReading(id, { code: 'needs-landmark', landmark, have: 0, need: 1 }),
    };
  }
  return {
    status: 'found',
    x: point.x,
    frame: event.frame,
    eventId: event.id,
    variance: context.landmarkSd(landmark, posture) ** 2,
  };
}

export const underwaterDistanceDefinitions: readonly ReadingDefinition[] = [
  {
    id,
    group: 'course',
    label: 'Underwater part, read off the picture',
    brief: 'toes at push-off → head at breakout',
    definition:
      'Distance along travel from the toes on the frame of the push-off to the ear on the frame of the breakout, by the scene’s scale; fixed camera, both in the picture.',
    forCoach:
      'Where the head broke the surface. The rule is 15 m; the interval says how sure the picture is.',
    forSwimmer: 'Where you came up.',
    source: 'World Aquatics swimming rules (SW): head must surface by 15 m in butterfly and backstroke',
    digits: 1,
  },
];
