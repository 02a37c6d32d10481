import type { FrameRange } from '#core/timeline/frame-range';
import type { EventKind } from '#core/marks/event-kind';
import { median } from '#core/signal/median';
import type { EventMark } from '#core/swim-file/swim-schema';
import { type ClipClock, frameAtRealTime, realTimeOf } from '#core/timeline/clip-clock';

/** Half a second of film is looped, a quarter to each side of where the moment is expected. */
const halfWindow = 0.25;
/** Seconds of a stroke and of a kick until the swim itself tells: round figures from common practice, no source. */
const usualStroke = 1.2;
const usualKick = 0.5;

/** When in the stroke the moments of a pass come, shares from hand entry; our own round figures, only to know where to look. */
const strokeShares: readonly number[] = [0, 0.02, 0.2, 0.3, 0.5, 0.5, 0.6, 0.73, 0.7, 1, 1.3];
/** The same for kicks alone: a top, then a bottom, half a kick later each. */
const kickShare = 0.5;

/** Seconds between marks of one kind, in the middle; null with fewer than two. */
function spacing(
  events: readonly Pick<EventMark, 'kind' | 'frame'>[],
  kind: EventKind,
  clock: ClipClock,
): number | null {
  const times = events
    .filter((each) => each.kind === kind)
    .map((each): number => realTimeOf(clock, each.frame))
    .sort((a, b) => a - b);
  if (times.length < 2) return null;
  return median(times.slice(1).map((time, i) => time - (times[i] as number)));
}

/**
 * The half second in which a step of the pass is expected: from the last step marked in this pass, by the swim's own
 * tempo where marks tell it. Before the first mark: around the playhead.
 */
export function passWindow(
  step: number,
  marked: { readonly step: number; readonly frame: number } | null,
  playhead: number,
  events: readonly Pick<EventMark, 'kind' | 'frame'>[],
  stroking: boolean,
  clock: ClipClock,
): FrameRange {
  const cycle = stroking
    ? (spacing(events, 'entry', clock) ?? 2 * (spacing(events, 'kick-top', clock) ?? usualStroke / 2))
    : (spacing(events, 'kick-top', clock) ?? usualKick);
  const share = (at: number): number => (stroking ? (strokeShares[at] ?? 1) : kickShare * at);
  const middle = marked
    ? realTimeOf(clock, marked.frame) + (share(step) - share(marked.step)) * cycle
    : realTimeOf(clock, playhead);
  const first = frameAtRealTime(clock, Math.max(0, middle - halfWindow));
  const last = frameAtRealTime(clock, middle + halfWindow);
  // at a clip's ends, and in slow film, still more than one picture
  return { first: Math.min(first, Math.max(0, last - 2)), last };
}
