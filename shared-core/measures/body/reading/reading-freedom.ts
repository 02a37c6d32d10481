import { eventKinds } from '../../../marks/event-kind';
import { landmarkNames } from '../../../marks/landmark';
import { effectiveFreedom, type VariancePart } from '../../../uncertainty/effective-freedom';
import type { BodyContext } from '../context/body-context';
import type { Measured } from './measured';

/**
 * Degrees of freedom behind a reading's variance where the coach's marking error was measured: each kind of event and each
 * landmark brings those of its own re-markings, weighed by what it brings to the variance. Where a family does not say what
 * each brings, they are taken to bring alike. Scale, frame rounding and what is assumed are not estimated from re-markings.
 */
export function readingFreedom(context: BodyContext, measured: Measured): number {
  const { freedom } = context.input.error;
  if (!freedom) return Infinity;
  const own = measured.ownVariance;
  const total = own + (measured.sharedVariance ?? 0);
  const { byKind, frames, landmarks = landmarkNames, eventIds = [] } = measured;
  let parts: readonly VariancePart[];
  if (byKind) {
    parts = [...byKind].map(([kind, variance]) => ({ variance, freedom: freedom.events[kind] ?? Infinity }));
  } else {
    const ofLength = /^(m|L|px)(\/s)?$/.test(measured.unit);
    const unit = ofLength ? context.lengthVariance.own * measured.value ** 2 : 0;
    const marks = Math.max(0, own - unit);
    const sources =
      frames.length > 0
        ? landmarks.map((name) => freedom.landmarks[name])
        : kindsOf(context, eventIds).map((kind) => freedom.events[kind]);
    parts = sources.map((each) => ({ variance: marks / sources.length, freedom: each ?? Infinity }));
  }
  const ofMarks = parts.reduce((sum, part) => sum + part.variance, 0);
  return effectiveFreedom(parts, Math.max(0, total - ofMarks));
}

function kindsOf({ events }: BodyContext, ids: readonly string[]): readonly (typeof eventKinds)[number][] {
  const wanted = new Set(ids);
  const found = new Set(events.flatMap(({ event }) => (wanted.has(event.id) ? [event.kind] : [])));
  return eventKinds.filter((kind) => found.has(kind));
}
