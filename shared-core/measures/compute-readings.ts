import type { Swimmer } from '../swim-file/squad-schema';
import type { Swim } from '../swim-file/swim-schema';
import { tableFromRecord } from '../timeline/frame-times-record';
import { assumedMarkingError } from '../uncertainty/assumed-marking-error';
import type { MarkingError } from '../uncertainty/marking-error';
import { type BodyContext, bodyContext } from './body/body-context';
import { families } from './families';
import type { Reading } from './reading';

export interface ReadingKnowledge {
  /** The swimmer's record; null when it is not known who swims. */
  readonly swimmer: Swimmer | null;
  /** The coach's measured marking error; null takes the assumed one. */
  readonly markingError: MarkingError | null;
}

/** A swim made ready for readings: sorted, timed, turned level. Cost: linear in marks. */
export function readingContext(swim: Swim, knowledge: ReadingKnowledge): BodyContext {
  return bodyContext({
    swim,
    clock: { table: tableFromRecord(swim.clip.frameTimes), slowdown: swim.clip.slowdown.factor },
    error: knowledge.markingError ?? assumedMarkingError(swim.clip.height),
    swimmer: knowledge.swimmer,
  });
}

/** Every reading of the catalogue, computed or missing with its reasons. Pure; nothing of it is ever stored. */
export function computeReadings(context: BodyContext): readonly Reading[] {
  return families.flatMap((family) => family.read(context));
}
