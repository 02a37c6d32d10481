import type { LandmarkName } from '../marks/landmark';
import type { Swim } from '../swim-file/swim-schema';
import { type ClipClock, localFrameInterval } from '../timeline/clip-clock';
import type { QuestionContext } from './next-questions';
import { proposeEvents } from './propose-events';
import { readingNeeds } from './reading-needs';

/** What questions about a swim are judged by: its marked and proposed moments, and how quick its film is. */
export function questionContext(
  swim: Swim,
  clock: ClipClock,
  isMarked: (landmark: LandmarkName, frame: number) => boolean,
): QuestionContext {
  const first = swim.followed[0]?.frame ?? 0;
  const interval = localFrameInterval(clock, first);
  return {
    isMarked,
    interval,
    need: readingNeeds([...swim.events, ...proposeEvents(swim, clock)], interval),
  };
}
