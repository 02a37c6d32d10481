import { type EventKind, eventKinds } from '#core/marks/event-kind';
import { hasPoint } from '#core/swim-file/has-point';
import type { EventMark, Posture, Swim } from '#core/swim-file/swim-schema';
import { keptWith } from '#core/units/kept-with';

const inOrder = keptWith((events: readonly EventMark[]) =>
  [...events].sort((p, q) => p.frame - q.frame || eventKinds.indexOf(p.kind) - eventKinds.indexOf(q.kind)),
);
/** All events by frame, then by the order of one stroke. */
export const eventsInOrder = (swim: Swim): readonly EventMark[] => inOrder(swim.events);

const counts = keptWith((events: readonly EventMark[]) => {
  const out = Object.fromEntries(eventKinds.map((kind) => [kind, 0])) as Record<EventKind, number>;
  for (const mark of events) out[mark.kind] += 1;
  return out;
});
export const eventCounts = (swim: Swim): Readonly<Record<EventKind, number>> => counts(swim.events);

const byFrame = keptWith(
  (postures: readonly Posture[]) => new Map(postures.map((posture) => [posture.frame, posture])),
);
export const postureOn = (swim: Swim, frame: number): Posture | null =>
  byFrame(swim.postures).get(frame) ?? null;

/** Postures with a point laid; where the coach only said that one is hidden there is no body line. */
export const bodyLines = keptWith((postures: readonly Posture[]) => postures.filter(hasPoint));

const markedFrames = keptWith((swim: Swim) =>
  [
    ...new Set([
      ...swim.events.map((mark) => mark.frame),
      ...bodyLines(swim.postures).map((each) => each.frame),
    ]),
  ].sort((p, q) => p - q),
);
/** Frames that carry a mark of any kind, ascending: where "previous event" and "next event" stop. */
export const framesWithMarks = (swim: Swim): readonly number[] => markedFrames(swim);

/** The nearest of `frames` beyond `from` in a direction, or null at the end. `frames` ascending. */
export function nextOf(frames: readonly number[], from: number, way: -1 | 1): number | null {
  return (way > 0 ? frames.find((each) => each > from) : frames.findLast((each) => each < from)) ?? null;
}
