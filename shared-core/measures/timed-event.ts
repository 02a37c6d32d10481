import type { EventMark } from '../swim-file/swim-schema';

/** A mark with its time and how well that is known. */
export interface TimedEvent {
  readonly event: EventMark;
  /** Real seconds. */
  readonly time: number;
  /** Variance of the time, s²: frame rounding and marking. */
  readonly variance: number;
}
