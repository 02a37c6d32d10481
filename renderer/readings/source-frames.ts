import type { Reading } from '#core/measures/reading';
import type { Swim } from '#core/swim-file/swim-schema';

/** Frames a reading came from, ascending, each once. */
export function sourceFrames(reading: Reading, swim: Swim): readonly number[] {
  if (reading.status !== 'computed') return [];
  const ids = new Set(reading.from.eventIds);
  const frames = swim.events.filter((mark) => ids.has(mark.id)).map((mark) => mark.frame);
  return [...new Set([...frames, ...reading.from.postureFrames])].sort((p, q) => p - q);
}
