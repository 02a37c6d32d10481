import type { EventKind } from '../../../marks/event-kind';
import type { LandmarkName } from '../../../marks/landmark';
import type { Point } from '../../../units/point';
import { postureReadingsWords } from '../../../words/posture-readings';

export type PosturePoints = Partial<Record<LandmarkName, Point | undefined>>;

export interface PostureSituation {
  /** 1 on the front, −1 on the back. */
  readonly belly: 1 | -1;
  /** Standard deviation of a coordinate, in the unit of the points. */
  readonly sd: number;
}

/** One thing read off a single posture. */
export interface PostureMeasure {
  readonly id: string;
  readonly kind: 'angle' | 'length' | 'depth';
  readonly needs: readonly LandmarkName[];
  /** Taken in as well where they are marked. */
  readonly alsoReads?: readonly LandmarkName[];
  readonly turnsWithLevel: boolean;
  /** Mean of values, or root of the mean of squares (the measure then returns the square). */
  readonly combine: 'mean' | 'root';
  /** Also read at these events. */
  readonly at: readonly EventKind[];
  /** Also read over the glide from the wall. */
  readonly inGlide?: true;
  /** Value on one posture; null when it isn't defined there. */
  readonly read: (points: PosturePoints, situation: PostureSituation) => number | null;
  readonly label: string;
  readonly brief: string;
  readonly definition: string;
  readonly forCoach: string;
  readonly forSwimmer: string;
  readonly source: string;
}

/** Sources that several measures share. */
export const ownAngle = postureReadingsWords('ourOwnDefinitionUsual');
export const commonPractice = postureReadingsWords('commonPracticeNo');
