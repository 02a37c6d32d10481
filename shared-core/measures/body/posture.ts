import type { EventKind } from '../../marks/event-kind';
import { bodyChain } from '../../marks/landmark';
import { eventsOf } from '../events/event-list';
import { withoutTrend } from '../../signal/without-trend';
import { standardDeviation } from '../../signal/standard-deviation';
import type { MissingReason, Reading, ReadingDefinition, Singles } from '../reading';
import type { BodyContext } from './body-context';
import type { BodyGeometry } from './body-geometry';
import {
  type CycleValue,
  computedReading,
  type Measured,
  missingReading,
  unitPart,
} from './measured-reading';
import { z95 } from '../../uncertainty/normal-quantile';
import type { PostureMeasure } from './posture-measure';
import { postureMeasures } from './posture-measures';
import { meanError, meanSd, postureValues, type PostureValues } from './posture-values';
import { waveNotSeen } from './side-view';
import { strokeMeans } from './stroke-means';

/** Means over more postures than this come without their single values. Our default. */
const listedPostures = 300;

const kept = new WeakMap<BodyGeometry, Map<string, Reading>>();

/** Every posture measure: its mean over all postures, and over the postures at each of its events. */
export function postureReadings(context: BodyContext): readonly Reading[] {
  const view = waveNotSeen(context);
  const known = kept.get(context.geometry) ?? new Map<string, Reading>();
  kept.set(context.geometry, known);
  return postureMeasures.flatMap((measure): Reading[] => {
    const ids = [measure.id, ...measure.at.map((kind) => atId(measure.id, kind))];
    if (view) return ids.map((id) => missingReading(id, view));
    const values = postureValues(context, measure);
    const key = `${measure.id} ${context.belly}`;
    const over = known.get(key) ?? summarised(context, measure, measure.id, values, values.defined, null);
    known.set(key, over);
    return [
      over,
      ...measure.at.map((kind): Reading => {
        const id = atId(measure.id, kind);
        const events = eventsOf(context.events, kind);
        if (events.length === 0) {
          return missingReading(id, { code: 'needs-events', kind, have: 0, need: 1 });
        }
        const at = new Map(events.map((e) => [e.event.frame, e.event.id]));
        const there = [...at.keys()]
          .sort((a, b) => a - b)
          .flatMap((frame) => {
            const place = context.postureAt(frame)?.place;
            return place === undefined || Number.isNaN(values.values[place]) ? [] : [place];
          });
        return summarised(context, measure, id, values, there, { kind, ids: at });
      }),
    ];
  });
}

/** Kinds of event at which postures are read. */
export const postureEvents: readonly EventKind[] = [...new Set(postureMeasures.flatMap(({ at }) => at))];

const atId = (id: string, kind: EventKind): string => `${id}-at-${kind}`;

/** A kind of event, and its events by frame. */
interface AtEvents {
  readonly kind: EventKind;
  readonly ids: ReadonlyMap<number, string>;
}

function summarised(
  context: BodyContext,
  measure: PostureMeasure,
  id: string,
  values: PostureValues,
  places: readonly number[],
  at: AtEvents | null,
): Reading {
  const needed = missingFor(context, measure, places.length, at?.ids ?? null);
  if (needed) return missingReading(id, needed);
  const n = places.length;
  const mean = average(values.values, places);
  const error = meanError(context, measure, values, places, at === null);
  const frames = framesAt(context, places);
  const marks = error.variance / n;
  const common = {
    cycles: at ? n : 0,
    frames,
    landmarks: measure.kind === 'length' ? [...new Set([...measure.needs, ...bodyChain])] : measure.needs,
    eventIds: at ? frames.flatMap((frame) => at.ids.get(frame) ?? []) : [],
    usesLevel: measure.turnsWithLevel,
    usesTravel: measure.id === 'trunk-pitch' || measure.id.startsWith('feet-direction'),
    usesSurface: measure.kind === 'depth',
    // neighbouring postures of a trace are alike: only one posture an event makes independent values
    spread: at !== null,
    instants: at !== null,
  };
  // a hand's worth of postures is worth listing; a dense trace is looked at as a curve
  const listed = at !== null || n <= listedPostures ? places : [];
  const sizes = (scale: number): readonly number[] =>
    places.map((place) => {
      const value = values.values[place] ?? 0;
      return scale * (measure.combine === 'root' ? Math.sqrt(Math.max(0, value)) : value);
    });
  const singles = (scale: number): Singles | null => {
    const sd = listed === places ? null : standardDeviation(sizes(scale));
    return sd === null ? null : { of: 'body-lines', count: n, sd };
  };
  const each = (scale: number): readonly CycleValue[] =>
    (listed.length === 0 ? [] : sizes(scale)).map((value, i) => {
      const frame = frames[i] ?? 0;
      return { value, fromFrame: frame, toFrame: frame };
    });
  /** The single values, those of them that are independent, and how they spread where they are too many to list. */
  const told = (scale: number): Pick<Measured, 'perCycle' | 'independent' | 'singles'> => {
    const perCycle = each(scale);
    const kicks = at?.kind === 'kick-top' || at?.kind === 'kick-bottom' ? at.kind : null;
    if (!kicks) return { perCycle, singles: singles(scale) };
    const byFrame = new Map(perCycle.map(({ fromFrame, value }) => [fromFrame, value]));
    return { perCycle, singles: singles(scale), independent: strokeMeans(context, kicks, byFrame) };
  };
  // a swimmer who rises or sinks all along does not differ from kick to kick
  const levelled = (values: ReturnType<typeof told>): Partial<Measured> => {
    const single = values.independent ?? (values.perCycle ?? []).map((one) => one.value);
    return { ...values, independent: withoutTrend(single), trendTaken: true };
  };
  if (measure.kind === 'angle') {
    return computedReading(context, id, {
      ...common,
      value: mean,
      unit: '°',
      ownVariance: marks,
      sharedVariance: error.perTilt ** 2 * context.tiltVariance,
      ...told(1),
    });
  }
  if (measure.kind === 'depth') {
    const part = unitPart(context, mean);
    const weights = values.ends ? [values.ends.a, values.ends.b] : [];
    const ends =
      weights.reduce((sum, weight) => sum + average(weight, places) ** 2, 0) *
      (context.input.error.scenePointSd * context.transform.perPixel) ** 2;
    return computedReading(context, id, {
      ...common,
      value: mean,
      unit: context.unit,
      ownVariance: marks + part.own,
      sharedVariance: ends + part.shared,
      ...levelled(told(1)),
    });
  }
  const length = context.bodyLength;
  if (!length) return missingReading(id, { code: 'needs-body-length' });
  const percent = 100 / (length.pixels * context.transform.perPixel);
  const lengthPart = length.variance / length.pixels ** 2;
  const value = percent * (measure.combine === 'root' ? Math.sqrt(Math.max(0, mean)) : mean);
  const tilt = (percent * error.perTilt) ** 2 * context.tiltVariance;
  if (measure.combine === 'mean') {
    return computedReading(context, id, {
      ...common,
      value,
      unit: '%L',
      ownVariance: percent ** 2 * marks + value ** 2 * lengthPart,
      sharedVariance: tilt,
      ...told(percent),
    });
  }
  // a squared distance near nothing is spread by the square of its noise, which the slope alone doesn't see
  const noise = meanSd(context, measure) ** 2;
  const spread = Math.sqrt(marks + (2 * (1.7 * noise) ** 2) / (6 * n));
  const low = percent * Math.sqrt(Math.max(0, mean - z95 * spread));
  const high = percent * Math.sqrt(Math.max(0, mean) + z95 * spread);
  return computedReading(context, id, {
    ...common,
    value,
    unit: '%L',
    ownVariance: ((high - low) / (2 * z95)) ** 2 + value ** 2 * lengthPart,
    bounds: { low, high },
    ...told(percent),
  });
}

function missingFor(
  context: BodyContext,
  measure: PostureMeasure,
  count: number,
  at: ReadonlyMap<number, string> | null,
): MissingReason | null {
  const { scene } = context;
  if (measure.kind === 'depth' && !scene.surface) return { code: 'needs-scene', item: 'surface' };
  const travels =
    measure.kind !== 'depth' && measure.id !== 'straightness' && measure.id !== 'frontal-thickness';
  if (travels && !context.transform.travelKnown) return { code: 'needs-scene', item: 'travel' };
  if (count > 0) return null;
  const postures = context.postures.filter((p) => !at || at.has(p.frame));
  for (const landmark of measure.needs) {
    const have = postures.filter((p) => p.picture[landmark]).length;
    if (have === 0) return { code: 'needs-landmark', landmark, have, need: 1 };
  }
  const together = postures.some((p) => measure.needs.every((name) => p.picture[name]));
  if (!together) return { code: 'needs-landmark', landmark: measure.needs[0] ?? 'hip', have: 0, need: 1 };
  if (measure.id === 'head-offset') return { code: 'not-for-this-drill' };
  return { code: 'degenerate', what: 'zero-length' };
}

function average(column: Float64Array, places: readonly number[]): number {
  let sum = 0;
  for (const place of places) sum += column[place] as number;
  return sum / places.length;
}

/** Frames of the postures at these places: the shared row of all where it is all of them. */
function framesAt(context: BodyContext, places: readonly number[]): readonly number[] {
  if (places.length === context.frames.length) return context.frames;
  return places.map((place) => context.frames[place] ?? 0);
}

const eventWords: Partial<Record<EventKind, string>> = {
  entry: 'hand entry',
  catch: 'the catch',
  shoulder: 'hands under shoulders',
  exit: 'hand exit',
  'kick-top': 'kick top',
  'kick-bottom': 'kick bottom',
};

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
    { ...base, id: m.id, label: m.label, definition: `${m.definition} Mean over all marked postures.` },
    ...m.at.map((kind) => ({
      ...base,
      id: atId(m.id, kind),
      label: `${m.label} at ${eventWords[kind] ?? kind}`,
      definition: `${m.definition} Mean over the postures on frames marked as ${eventWords[kind] ?? kind}.`,
    })),
  ];
});
