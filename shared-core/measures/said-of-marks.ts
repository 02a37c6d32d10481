import type { BodyContext } from './body/context/body-context';
import { type Doubt, joinedDoubts } from './doubt';
import { measuredMarks } from './events/event-list';
import type { Reading } from './reading';

/** Says beside readings what is odd about marks that no single family looks at as a whole. */
export function saidOfMarks(context: BodyContext, readings: readonly Reading[]): readonly Reading[] {
  const past = framesPastEnd(context);
  const backward = backwardMarks(context);
  if (past.length === 0 && backward.length === 0) return readings;
  const everywhere: readonly Doubt[] = past.length > 0 ? [{ code: 'marks-past-end', frames: past }] : [];
  const ofDistances: Doubt = {
    code: 'distances-run-backward',
    frames: backward.map(({ event }) => event.frame),
  };
  const ids = new Set(backward.map(({ event }) => event.id));
  return readings.map((reading) => {
    if (reading.status === 'missing') return reading;
    const measured = reading.from.eventIds.some((id) => ids.has(id));
    const doubts = joinedDoubts(reading.doubts, everywhere, measured ? [ofDistances] : []);
    return doubts.length === reading.doubts.length ? reading : { ...reading, doubts };
  });
}

/** Frames of marks and body lines after the last picture, rising: nothing is read from them. */
function framesPastEnd({ input }: BodyContext): readonly number[] {
  const { swim, clock } = input;
  const count = clock.table.starts.length;
  const frames = [...swim.events, ...swim.postures].map(({ frame }) => frame);
  return frames.filter((frame) => frame >= count).sort((a, b) => a - b);
}

/** All distance marks, where their metres do not grow from mark to mark; else none. */
function backwardMarks({ events }: BodyContext): ReturnType<typeof measuredMarks> {
  const marks = measuredMarks(events);
  const grow = marks.every(({ metres }, i) => metres > (marks[i - 1]?.metres ?? -Infinity));
  return grow ? [] : marks;
}
