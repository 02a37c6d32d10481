import type { EventKind } from '../marks/event-kind';
import type { LandmarkName } from '../marks/landmark';

/** Which parts of a marking error come from the coach's own re-marking; the rest is assumed. */
export interface MeasuredParts {
  readonly events: readonly EventKind[];
  readonly landmarks: readonly LandmarkName[];
  readonly followed: readonly LandmarkName[];
}

/** From how many re-markings each measured part comes: degrees of freedom of its standard deviation. */
interface MarkingFreedom {
  readonly events: Readonly<Partial<Record<EventKind, number>>>;
  readonly landmarks: Readonly<Partial<Record<LandmarkName, number>>>;
}

/**
 * The coach's marking error: standard deviations of one mark.
 * Frame rounding is not in here: it comes from the clip (Δ²/12) and is added where an event is used.
 */
export interface MarkingError {
  /** 'measured' once any part is. */
  readonly basis: 'assumed' | 'measured';
  readonly measured: MeasuredParts;
  /** Left out where nothing was estimated from re-markings. */
  readonly freedom?: MarkingFreedom;
  /** Seconds (real), by kind of event. */
  readonly eventSd: Readonly<Record<EventKind, number>>;
  /** Pixels of the shown picture, by landmark, per axis. */
  readonly landmarkSd: Readonly<Record<LandmarkName, number>>;
  /** The same for points that the machine followed; never below `landmarkSd`. */
  readonly followedSd: Readonly<Record<LandmarkName, number>>;
  /** Pixels, per axis, for the end of a scale, level or surface line. */
  readonly scenePointSd: number;
}

export const nothingMeasured: MeasuredParts = { events: [], landmarks: [], followed: [] };
