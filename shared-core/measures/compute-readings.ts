import type { Swimmer } from '../swim-file/squad-schema';
import type { Swim } from '../swim-file/swim-schema';
import type { FrameTable } from '../timeline/frame-table';
import { type FrameTimesRecord, tableFromRecord } from '../timeline/frame-times-record';
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

const tables = new WeakMap<FrameTimesRecord, FrameTable>();
const assumed = new Map<number, MarkingError>();

/** The same table object for the same record, so that what hangs on it can be kept. */
function tableOf(record: FrameTimesRecord): FrameTable {
  const table = tables.get(record) ?? tableFromRecord(record);
  tables.set(record, table);
  return table;
}

function assumedFor(height: number): MarkingError {
  const error = assumed.get(height) ?? assumedMarkingError(height);
  assumed.set(height, error);
  return error;
}

/** A swim made ready for readings: sorted, timed, turned level. Cost: linear in marks. */
export function readingContext(swim: Swim, knowledge: ReadingKnowledge): BodyContext {
  return bodyContext({
    swim,
    clock: { table: tableOf(swim.clip.frameTimes), slowdown: swim.clip.slowdown.factor },
    error: knowledge.markingError ?? assumedFor(swim.clip.height),
    swimmer: knowledge.swimmer,
  });
}

/** Every reading of the catalogue, computed or missing with its reasons. Pure; nothing of it is ever stored. */
export function computeReadings(context: BodyContext): readonly Reading[] {
  return families.flatMap((family) => family.read(context));
}
