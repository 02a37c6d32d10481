import type { EventMark } from '../swim-file/swim-schema';
import type { Tracked } from '../uncertainty/tracked';

/** A mark with its time and how well that is known. */
export interface TimedEvent {
  readonly event: EventMark;
  /** Real seconds. */
  readonly time: number;
  /** Variance of the time, s²: frame rounding and marking. */
  readonly variance: number;
  /** The marks it was put between, where it is not marked itself. */
  readonly put?: Tracked;
}
