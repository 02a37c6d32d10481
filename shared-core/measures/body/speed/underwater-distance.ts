import type { EventKind } from '../../../marks/event-kind';
import type { LandmarkName } from '../../../marks/landmark';
import { z95 } from '../../../uncertainty/normal-quantile';
import type { MissingReason, Reading, ReadingDefinition } from '../../reading';
import type { BodyContext } from '../context/body-context';
import type { TimedEvent } from '../../timed-event';
import { pointAt } from '../points/landmark-column';
import { computedReading, missingReading, unitPart } from '../reading/measured-reading';
import { movedCamera } from '../context/moved-camera';
import { notFromSide } from '../context/side-view';
import { speedReadingsWords } from '../../../words/speed-readings';

const ids = ['underwater-distance-scale', 'underwater-speed-scale'] as const;

/** World Aquatics swimming rules (SW): the head must break the surface by 15 m in butterfly and backstroke. */
const ruleMetres = 15;

/** Distance and mean speed of the underwater part read off the picture: toes at push-off to head at breakout. */
export function underwaterDistanceReadings(context: BodyContext): readonly Reading[] {
  const missing = (reason: MissingReason): readonly Reading[] => ids.map((id) => missingReading(id, reason));
  const view = notFromSide(context);
  if (view) return missing(view);
  if (!context.transform.travelKnown) return missing({ code: 'needs-scene', item: 'travel' });
  if (context.unit !== 'm') return missing({ code: 'needs-scene', item: 'scale' });
  const moved = movedCamera(context);
  if (moved) return missing(moved);
  const wall = place(context, 'push-off', 'toe');
  const head = place(context, 'breakout', 'ear');
  if (wall.status === 'missing') return missing(wall.reason);
  if (head.status === 'missing') return missing(head.reason);
  const value = head.x - wall.x;
  if (!(value > 0)) return missing({ code: 'degenerate', what: 'zero-length' });
  const seconds = head.event.time - wall.event.time;
  if (!(seconds > 0)) return missing({ code: 'degenerate', what: 'equal-times' });
  const speed = value / seconds;
  // the head goes on at about this speed while the breakout is marked a little early or late; the feet are at the wall
  const late = head.event.variance;
  const part = unitPart(context, value);
  const { camera } = context;
  const [from, to] = [wall.event.event.frame, head.event.event.frame];
  const path =
    camera.state === 'carried' ? camera.distanceVariance(from, to) * context.transform.perPixel ** 2 : 0;
  const marks = wall.variance + head.variance + path + speed ** 2 * late;
  const sd = Math.sqrt(marks + part.own + part.shared);
  const common = {
    cycles: 0,
    frames: [wall.event.event.frame, head.event.event.frame],
    landmarks: ['toe', 'ear'] as const,
    eventIds: [wall.event.event.id, head.event.event.id],
    usesLevel: true,
    usesTravel: true,
    usesScale: true,
  };
  // a late breakout is farther as well as later, so that it changes the speed hardly at all
  const timing = (speed / seconds) ** 2 * wall.event.variance;
  return [
    computedReading(context, ids[0], {
      ...common,
      value,
      unit: 'm',
      ownVariance: marks + part.own,
      sharedVariance: part.shared,
      notes: value > ruleMetres - z95 * sd ? ['beyond-15-m'] : [],
    }),
    computedReading(context, ids[1], {
      ...common,
      value: speed,
      unit: 'm/s',
      ownVariance: (wall.variance + head.variance + path + part.own) / seconds ** 2 + timing,
      sharedVariance: part.shared / seconds ** 2,
    }),
  ];
}

type Place =
  | {
      readonly status: 'found';
      readonly x: number;
      readonly event: TimedEvent;
      readonly variance: number;
    }
  | { readonly status: 'missing'; readonly reason: MissingReason };

function place(context: BodyContext, kind: EventKind, landmark: LandmarkName): Place {
  const event = context.events.find((e) => e.event.kind === kind);
  if (!event) return { status: 'missing', reason: { code: 'needs-events', kind, have: 0, need: 1 } };
  const posture = context.postureAt(event.event.frame);
  const point = posture && pointAt(context.columns[landmark], posture.place);
  if (!posture || !point)
    return { status: 'missing', reason: { code: 'needs-landmark', landmark, have: 0, need: 1 } };
  if (posture.adrift) return { status: 'missing', reason: { code: 'needs-still-thing' } };
  return { status: 'found', x: point.x, event, variance: context.landmarkSd(landmark, posture) ** 2 };
}

export const underwaterDistanceDefinitions: readonly ReadingDefinition[] = [
  {
    id: ids[0],
    group: 'course',
    label: speedReadingsWords('underwaterPartRead'),
    brief: speedReadingsWords('toesAtPushOff'),
    definition: speedReadingsWords('distanceAlongTravel'),
    forCoach: speedReadingsWords('whereHeadBroke'),
    forSwimmer: speedReadingsWords('whereYouCame'),
    source: speedReadingsWords('worldAquaticsSwimming'),
    digits: 1,
  },
  {
    id: ids[1],
    group: 'course',
    label: speedReadingsWords('underwaterSpeedRead'),
    brief: speedReadingsWords('toesAtPushOffHead'),
    definition: speedReadingsWords('distanceAlongTravelFrom'),
    forCoach: speedReadingsWords('meanSpeedUnderwater'),
    forSwimmer: speedReadingsWords('howFastYouWere'),
    source: speedReadingsWords('ourOwnDefinition'),
    digits: 2,
  },
];
