import type { EventKind } from '../../../marks/event-kind';
import { eventsOf } from '../../events/event-list';
import type { Reading, ReadingDefinition } from '../../reading';
import type { BodyContext } from '../context/body-context';
import type { BodyGeometry } from '../context/body-geometry';
import { glideOf } from './glide';
import { missingReading } from '../reading/measured-reading';
import type { PostureMeasure } from './posture-measure';
import { postureMeasures } from './posture-measures';
import { type PosturesAt, postureSummary } from './posture-summary';
import { postureValues } from './posture-values';
import { waveNotSeen } from '../context/side-view';
import { keptWith } from '../../../units/kept-with';
import { postureReadingsWords } from '../../../words/posture-readings';

const kept = keptWith((_: BodyGeometry) => new Map<string, Reading>());

/** Every posture measure: its mean over all postures, over those of the glide, and over those at each of its events. */
export function postureReadings(context: BodyContext): readonly Reading[] {
  const view = waveNotSeen(context);
  const known = kept(context.geometry);
  const glide = glideOf(context.events);
  const glidePlaces = glide.ok ? placesBetween(context, glide.from.event.frame, glide.to.event.frame) : [];
  const lined = new Map<EventKind, Lined>();
  const linedAt = (kind: EventKind): Lined => {
    const found = lined.get(kind) ?? linesAt(context, kind);
    lined.set(kind, found);
    return found;
  };
  const isSeen = (measure: PostureMeasure): boolean => !view || (context.bendsInPicture && isJoint(measure));
  // all values first: read in between they take half as long again, as the engine then compiles the two as one
  for (const measure of postureMeasures) if (isSeen(measure)) postureValues(context, measure);
  return postureMeasures.flatMap((measure): Reading[] => {
    if (view && !isSeen(measure)) return idsOf(measure).map((id) => missingReading(id, view));
    const values = postureValues(context, measure);
    const isDefined = (place: number): boolean => !Number.isNaN(values.values[place]);
    const defined = (places: readonly number[]): readonly number[] =>
      places.every(isDefined) ? places : places.filter(isDefined);
    const key = `${measure.id} ${context.belly}`;
    const over =
      known.get(key) ?? postureSummary(context, measure, measure.id, values, values.defined, { of: 'all' });
    known.set(key, over);
    const atEvents = measure.at.map((kind): Reading => {
      const id = atId(measure.id, kind);
      const at = linedAt(kind);
      if (at.ids.size === 0) return missingReading(id, { code: 'needs-events', kind, have: 0, need: 1 });
      return postureSummary(context, measure, id, values, defined(at.places), at);
    });
    if (!measure.inGlide) return [over, ...atEvents];
    const id = glideId(measure.id);
    const gliding = glide.ok
      ? postureSummary(context, measure, id, values, defined(glidePlaces), { of: 'glide', ...glide })
      : missingReading(id, glide.reason);
    return [over, gliding, ...atEvents];
  });
}

type Lined = Extract<PosturesAt, { of: 'events' }>;

function linesAt(context: BodyContext, kind: EventKind): Lined {
  const ids = new Map(eventsOf(context.events, kind).map(({ event }) => [event.frame, event.id]));
  const frames = [...ids.keys()].filter((frame) => context.postureAt(frame)).sort((a, b) => a - b);
  const places = frames.flatMap((frame) => context.postureAt(frame)?.place ?? []);
  return {
    of: 'events',
    kind,
    ids,
    places,
    frames,
    eventIds: frames.flatMap((frame) => ids.get(frame) ?? []),
  };
}

/** Places of the postures on two frames and between them. */
function placesBetween({ frames }: BodyContext, from: number, to: number): readonly number[] {
  return frames.flatMap((frame, place) => (from <= frame && frame <= to ? [place] : []));
}

/** Kinds of event at which postures are read, or between which a glide lies. */
export const postureEvents: readonly EventKind[] = [
  ...new Set<EventKind>([...postureMeasures.flatMap(({ at }) => at), 'push-off', 'kick-top', 'kick-bottom']),
];

/** Joints bend in one plane and are read against the body itself: neither level nor surface counts. */
const isJoint = ({ kind, turnsWithLevel }: PostureMeasure): boolean => kind === 'angle' && !turnsWithLevel;

const idsOf = ({ id, inGlide, at }: PostureMeasure): readonly string[] => [
  id,
  ...(inGlide ? [glideId(id)] : []),
  ...at.map((kind) => atId(id, kind)),
];

const atId = (id: string, kind: EventKind): string => `${id}-at-${kind}`;
const glideId = (id: string): string => `${id}-in-glide`;

const eventWords: Partial<Record<EventKind, string>> = {
  entry: postureReadingsWords('handEntry'),
  catch: postureReadingsWords('catch'),
  shoulder: postureReadingsWords('handsUnderShoulders'),
  exit: postureReadingsWords('handExit'),
  'kick-top': postureReadingsWords('kickTop'),
  'kick-bottom': postureReadingsWords('kickBottom'),
};

/** How the values on single postures make one. */
const overAll = ({ combine }: PostureMeasure): string =>
  combine === 'root' ? postureReadingsWords('againRootMean') : postureReadingsWords('mean');

export const postureDefinitions: readonly ReadingDefinition[] = postureMeasures.flatMap((m) => {
  const base = {
    group: 'posture' as const,
    brief: m.brief,
    forCoach: m.forCoach,
    forSwimmer: m.forSwimmer,
    source: m.source,
    digits: m.kind === 'angle' ? 0 : m.kind === 'depth' ? 2 : 1,
  };
  return [
    {
      ...base,
      id: m.id,
      label: m.label,
      definition: postureReadingsWords('overAllMarked', { definition: m.definition, overAll: overAll(m) }),
    },
    ...(m.inGlide ? [inGlide(m, base)] : []),
    ...m.at.map((kind) => ({
      ...base,
      id: atId(m.id, kind),
      label: postureReadingsWords('at', { label: m.label, event: eventWords[kind] ?? kind }),
      definition: postureReadingsWords('overPosturesFrames', {
        definition: m.definition,
        overAll: overAll(m),
        event: eventWords[kind] ?? kind,
      }),
    })),
  ];
});

function inGlide(
  measure: PostureMeasure,
  base: Omit<ReadingDefinition, 'id' | 'label' | 'definition'>,
): ReadingDefinition {
  const { id, label, definition, forCoach, forSwimmer } = measure;
  return {
    ...base,
    id: glideId(id),
    label: postureReadingsWords('glide', { label }),
    definition: postureReadingsWords('overBodyLines', { definition, overAll: overAll(measure) }),
    forCoach: postureReadingsWords('glideHeldFrom', { forCoach }),
    forSwimmer: postureReadingsWords('hereWhileYou', { forSwimmer }),
  };
}
