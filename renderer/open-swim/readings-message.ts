import type { Reading } from '#core/measures/reading';
import type { Swimmer } from '#core/swim-file/squad-schema';
import type { MarkingError } from '#core/uncertainty/marking-error';
import type { ListChange, SwimDifference } from './swim-difference';

/** What readings are made of beside the marks; null: as it was. */
interface KnownChange {
  readonly swimmer: Swimmer | null;
  readonly markingError: MarkingError | null;
}

/** To the worker: what changed since the last message. */
export interface ToReadingsWorker {
  readonly swim: SwimDifference;
  readonly known: KnownChange | null;
}

/** From it, one for each message: which readings are others than those it sent last. */
export interface FromReadingsWorker {
  readonly readings: ListChange<Reading> | null;
  /** What the computation took, milliseconds. */
  readonly tookMs: number;
}
