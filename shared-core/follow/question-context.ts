import type { LandmarkName } from '../marks/landmark';
import type { Swim } from '../swim-file/swim-schema';
import { type ClipClock, localFrameInterval } from '../timeline/clip-clock';
import type { QuestionContext } from './next-questions';
import { overSurface } from './over-surface';
import { proposeEvents } from './propose-events';
import { readingNeeds } from './reading-needs';
import { settledStretches } from './settled-stretch';

/**
 * What questions about a swim are judged by: its marked and proposed moments, how quick its film is, what was answered, and
 * where an arm is out of the water.
 */
export function questionContext(
  swim: Swim,
  clock: ClipClock,
  isMarked: (landmark: LandmarkName, frame: number) => boolean,
): QuestionContext & Required<Pick<QuestionContext, 'isSettled'>> {
  const first = swim.followed[0]?.frame ?? 0;
  const interval = localFrameInterval(clock, first);
  const moments = [...swim.events, ...proposeEvents(swim, clock)];
  const isAnswered = settledStretches(swim);
  const isOver = overSurface(swim, moments);
  return {
    isMarked,
    isSettled: (landmark, frame) => isAnswered(landmark, frame) || isOver(landmark, frame),
    interval,
    need: readingNeeds(moments, interval),
  };
}
