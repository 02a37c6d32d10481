import type { EventKind } from '../marks/event-kind';
import type { LandmarkName } from '../marks/landmark';

/**
 * The coach's marking error: standard deviations of one mark.
 * Frame rounding is not in here: it comes from the clip (Δ²/12) and is added where an event is used.
 */
export interface MarkingError {
  readonly basis: 'assumed' | 'measured';
  /** Seconds (real), by kind of event. */
  readonly eventSd: Readonly<Record<EventKind, number>>;
  /** Pixels of the shown picture, by landmark, per axis. */
  readonly landmarkSd: Readonly<Record<LandmarkName, number>>;
  /** Pixels, per axis, for the end of a scale, level or surface line. */
  readonly scenePointSd: number;
}
