import type { EventKind } from '../../../marks/event-kind';
import type { LandmarkName } from '../../../marks/landmark';
import type { Doubt } from '../../doubt';
import type { ReadingNote, ReadingUnit, Singles } from '../../reading';

export interface CycleValue {
  readonly value: number;
  readonly fromFrame: number;
  readonly toFrame: number;
}

/** What a landmark family found, before it is dressed as a reading. */
export interface Measured {
  readonly value: number;
  readonly unit: ReadingUnit;
  /** Variance from marks, and the own part of scale or body length; unit². */
  readonly ownVariance: number;
  readonly sharedVariance?: number;
  /** What each kind of event brings to `ownVariance`, frame rounding left out. */
  readonly byKind?: ReadonlyMap<EventKind, number>;
  /** 95 % bounds when they are not symmetric; else made from the variances. */
  readonly bounds?: { readonly low: number; readonly high: number };
  /** The bounds already allow for a marking error that was itself estimated: they are no value ± something to be widened. */
  readonly widened?: boolean;
  /** Interval of what the swimmer does, where it is not made of the spread of `perCycle`. */
  readonly swimmerBounds?: { readonly low: number; readonly high: number } | null;
  readonly cycles: number;
  readonly perCycle?: readonly CycleValue[];
  /** Of single values that are too many to list. */
  readonly singles?: Singles | null;
  /** False when neighbouring values are not independent, so that their spread makes no interval. */
  readonly spread?: boolean;
  /** Independent values whose spread makes the interval, where those of `perCycle` are not; fewer than two make none. */
  readonly independent?: readonly number[] | null;
  /** A steady rise or fall over the swim was taken out of the values: it is no spread, and cost a degree of freedom. */
  readonly trendTaken?: boolean;
  /** Where neighbouring values share marks: how many times the variance of their mean is that of as many single ones. */
  readonly sharing?: number;
  readonly frames: readonly number[];
  /** Landmarks read on those frames; left out: any of the nine. */
  readonly landmarks?: readonly LandmarkName[];
  readonly eventIds?: readonly string[];
  /** Read at single instants of the kick or stroke, so that few pictures a kick make it coarse. */
  readonly instants?: boolean;
  readonly usesLevel?: boolean;
  readonly usesTravel?: boolean;
  /** Hangs on which end of the picture lies ahead, though nothing is measured along travel. */
  readonly usesDirection?: boolean;
  readonly usesSurface?: boolean;
  readonly usesScale?: boolean;
  readonly notes?: readonly ReadingNote[];
  readonly doubts?: readonly Doubt[];
}
