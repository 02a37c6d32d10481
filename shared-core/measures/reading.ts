import type { LandmarkName } from '../marks/landmark';
import type { EventKind } from '../marks/event-kind';
import type { View } from '../swim-file/swim-schema';
import type { Doubt } from './doubt';

export const readingGroups = ['kick', 'timing', 'body-wave', 'posture', 'speed', 'stroke', 'course'] as const;
export type ReadingGroup = (typeof readingGroups)[number];

/** Units a reading can carry; 'L' is body lengths (fingertip to toe in streamline), 'px' picture pixels. */
export type ReadingUnit =
  | 'Hz'
  | '1/min'
  | 's'
  | 'ms'
  | '%'
  | 'm'
  | 'L'
  | 'px'
  | '%L'
  | 'm/s'
  | 'L/s'
  | 'px/s'
  | '°'
  | 'count'
  | 'ratio'
  | 'm²/s';

/** Readings that others are made from. */
export const neededReadings = [
  'kick-frequency',
  'kick-amplitude-toe',
  'body-wave-speed',
  'stroke-rate',
] as const;
export type NeededReading = (typeof neededReadings)[number];

/** Why a reading can't be computed: which mark, landmark, scene item or view is missing. A closed union. */
export type MissingReason =
  | {
      readonly code: 'needs-events';
      readonly kind: EventKind;
      readonly have: number;
      readonly need: number;
    }
  | {
      readonly code: 'needs-landmark';
      readonly landmark: LandmarkName;
      readonly have: number;
      readonly need: number;
    }
  | {
      /** Marked, but on none of the frames it is read on: those of marks of a kind, or close beside them. */
      readonly code: 'needs-landmark-at';
      readonly landmark: LandmarkName;
      readonly kind: EventKind;
    }
  | {
      readonly code: 'needs-scene';
      readonly item: 'travel' | 'level' | 'surface' | 'scale';
    }
  | { readonly code: 'needs-body-length' }
  /** The camera moved, and nothing in the swimmer's plane says by how much. */
  | { readonly code: 'needs-still-thing' }
  | { readonly code: 'camera-turned' }
  /** It would be read from seen points, and how far off it then is was not proved. */
  | { readonly code: 'seen-not-proved' }
  | { readonly code: 'view-cannot-show'; readonly view: View }
  | { readonly code: 'lies-on-side' }
  | {
      readonly code: 'needs-full-cycles';
      readonly have: number;
      readonly need: number;
    }
  | { readonly code: 'not-for-this-drill' }
  | { readonly code: 'needs-denser-trace'; readonly landmark: LandmarkName }
  | {
      /** Marked, but where no picture is: on `frames` body lines. */
      readonly code: 'outside-picture';
      readonly landmark: LandmarkName;
      readonly frames: number;
    }
  | {
      /** A mark on the far side of another one is missing: a distance mark before the breakout, say. */
      readonly code: 'needs-event-beside';
      readonly kind: EventKind;
      readonly side: 'before' | 'after';
      readonly of: EventKind;
    }
  | { readonly code: 'needs-reading'; readonly reading: NeededReading }
  | {
      readonly code: 'marks-contradict';
      readonly what: Contradiction;
      /** Frames of the marks to look at; none where no single mark is meant. */
      readonly frames: readonly number[];
    }
  | {
      readonly code: 'degenerate';
      readonly what:
        | 'equal-times'
        | 'zero-speed'
        | 'collinear'
        | 'zero-length'
        | 'speed-above-wave'
        | 'other-way';
    };

/** What marks contradict each other in. */
export const contradictions = [
  'tops-below-bottoms',
  'hands-out-of-order',
  'kick-spacing',
  'stroke-spacing',
  'kicks-and-strokes',
  'kicks-and-toes',
] as const;
export type Contradiction = (typeof contradictions)[number];

/** Something true of the value that the coach must see beside it. */
export type ReadingNote =
  | 'few-cycles'
  | 'few-pictures'
  | 'marking-error-assumed'
  | 'marking-error-part-assumed'
  | 'kick-pairing-uneven'
  | 'slowdown-assumed'
  | 'implausible-for-a-human'
  | 'approximate-for-children'
  | 'short-ends'
  | 'hip-not-centre-of-mass'
  | 'level-assumed'
  | 'beyond-15-m'
  | 'few-pairs'
  | 'sparse-trace'
  | 'points-outside-picture'
  | 'not-reviewed'
  | 'scale-off-plane'
  | 'scale-across-lane'
  | 'off-plane-corrected'
  | 'size-changes'
  | 'camera-carried'
  | 'camera-turned'
  | 'camera-not-looked-at'
  | 'camera-loose'
  | 'straights-unfit'
  | 'plane-unfit';

/** What ties the picture to the pool, as far as a reading may use it. */
export type SceneItem = 'travel' | 'level' | 'surface' | 'scale' | 'plane' | 'straights';

/** A 95 % interval around a reading; `low <= value <= high` and `high > low` always. */
export interface Interval {
  readonly low: number;
  readonly high: number;
  /** 'this-swim': marking and scale only. 'this-swimmer': spread between cycles (Student t). */
  readonly question: 'this-swim' | 'this-swimmer';
}

/** Where a value came from: events by id, postures by frame. Clicking a reading lights these up. */
interface Provenance {
  readonly eventIds: readonly string[];
  readonly postureFrames: readonly number[];
  readonly sceneItems: readonly SceneItem[];
}

export interface Singles {
  readonly of: 'cycles' | 'body-lines';
  readonly count: number;
  /** Sample standard deviation, in the reading's unit. */
  readonly sd: number;
}

export interface ComputedReading {
  readonly status: 'computed';
  readonly id: string;
  readonly value: number;
  readonly unit: ReadingUnit;
  /** The interval to print as "± 95 %", and its question. */
  readonly interval: Interval;
  /** The other interval when both can be had. */
  readonly otherInterval: Interval | null;
  /** Part of the variance that every swim with the same scene set-up shares (scale); in unit². */
  readonly sharedVariance: number;
  /** Part of the variance that is this swim's own; in unit². */
  readonly ownVariance: number;
  /** Degrees of freedom of those variances where the marking error was itself estimated; left out where it was not. */
  readonly freedom?: number;
  readonly cycles: number;
  /** How many of the points it was read from the machine followed; 0: the coach marked all. */
  readonly followed: number;
  /** Per-cycle values in order of time, when the reading is a mean over cycles. */
  readonly perCycle: readonly {
    readonly value: number;
    readonly fromFrame: number;
    readonly toFrame: number;
  }[];
  /** How single values lie about their mean: of cycles, or of body lines. Null with fewer than two of them. */
  readonly singles: Singles | null;
  readonly from: Provenance;
  readonly notes: readonly ReadingNote[];
  /** Why the value may be wrong although it is computed; none where the marks hold together. */
  readonly doubts: readonly Doubt[];
}

export interface MissingReading {
  readonly status: 'missing';
  readonly id: string;
  /** At least one, the most helpful first. */
  readonly reasons: readonly MissingReason[];
}

export type Reading = ComputedReading | MissingReading;

/** What a reading is, apart from any swim: one entry of the catalogue. */
export interface ReadingDefinition {
  readonly id: string;
  readonly group: ReadingGroup;
  /** Sentence-case label, e.g. "Kick 1 with hand entry". */
  readonly label: string;
  /** Short line under the label, e.g. "kick top − entry". */
  readonly brief: string;
  /** One or two sentences: exactly what is computed, sign and domain. */
  readonly definition: string;
  /** What it tells the coach, in plain words, without inventing norms. */
  readonly forCoach: string;
  /** The same for the swimmer. */
  readonly forSwimmer: string;
  /** Reference, "common practice, no source", or "our own definition". */
  readonly source: string;
  /** Digits after the decimal point when no interval suggests otherwise. */
  readonly digits: number;
}
