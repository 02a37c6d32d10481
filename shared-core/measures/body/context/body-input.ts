import type { Swimmer } from '../../../swim-file/squad-schema';
import type { Swim } from '../../../swim-file/swim-schema';
import type { ClipClock } from '../../../timeline/clip-clock';
import type { MarkingError } from '../../../uncertainty/marking-error';

/** What the landmark readings need to know of a swim. */
export interface BodyInput {
  readonly swim: Swim;
  readonly clock: ClipClock;
  readonly error: MarkingError;
  /** The swimmer's record; null when unknown. */
  readonly swimmer: Pick<Swimmer, 'streamlineMetres' | 'bodyTable' | 'birthYear'> | null;
}
