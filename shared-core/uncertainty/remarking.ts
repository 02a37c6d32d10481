import { type EventKind, eventKinds } from '../marks/event-kind';
import { type LandmarkName, landmarkNames } from '../marks/landmark';
import type { MarkingError } from './marking-error';

/** First and second mark of the same thing, the second made without seeing the first; any one unit. */
export interface RemarkedPair {
  readonly first: number;
  readonly second: number;
}

/** How well one person repeats a mark. */
export interface Repeatability {
  readonly pairs: number;
  /** Mean of second − first; the unit of the marks. */
  readonly bias: number;
  /** Standard deviation of one mark: SD of the differences / √2. */
  readonly typicalError: number;
  /** Smallest difference of two marks that is not marking error at 95 %: 1.96 · √2 · SEM. */
  readonly leastRealChange: number;
  /** Fewer than ten pairs: too few to trust. */
  readonly tooFew: boolean;
}

/** Pairs below which a typical error is too uncertain to be used. Our default. */
export const pairsToTrust = 10;

/**
 * Typical error of pairs of marks. Null of fewer than two pairs, or of a number that is not finite. SEM equals the
 * typical error here, as it comes from the same differences.
 *
 * @see Hopkins 2000, Sports Med 30:1–15 (typical error)
 * @see Weir 2005, J Strength Cond Res 19:231–240 (MDC95)
 */
export function repeatability(pairs: readonly RemarkedPair[]): Repeatability | null {
  const differences = pairs.map(({ first, second }) => second - first);
  if (differences.length < 2 || !differences.every(Number.isFinite)) return null;
  const bias = differences.reduce((sum, each) => sum + each, 0) / differences.length;
  const squares = differences.reduce((sum, each) => sum + (each - bias) ** 2, 0);
  const typicalError = Math.sqrt(squares / (differences.length - 1)) / Math.SQRT2;
  return {
    pairs: differences.length,
    bias,
    typicalError,
    leastRealChange: leastRealChange(typicalError),
    tooFew: differences.length < pairsToTrust,
  };
}

/** MDC95 from a standard error of measurement: 1.96 · √2 · SEM, same unit. */
export function leastRealChange(standardError: number): number {
  return 1.96 * Math.SQRT2 * standardError;
}

/**
 * One thing marked twice: an event (real seconds), one axis of a landmark, or one axis of a landmark that the machine
 * had followed and the coach marked (pixels of the shown picture).
 */
export type Remarking = RemarkedPair &
  (
    | {
        readonly of: 'event';
        readonly kind: EventKind;
        /** Local frame interval in real seconds: its rounding is in both marks and is taken off again. */
        readonly frameInterval: number;
      }
    | {
        readonly of: 'landmark' | 'followed';
        readonly landmark: LandmarkName;
        /** Along or up the picture; each needs its ten pairs. Left out: not told apart. */
        readonly axis?: 'x' | 'y';
      }
  );

/** A picture point can't be set finer than a part of a pixel: a tenth. Our default. */
const finestPixels = 0.1;

/**
 * The coach's own marking error from re-marking, kind by kind; a kind of fewer than ten pairs keeps the fallback's, and so
 * does a point with fewer along or up the picture (the two are pooled: root of the mean of squares).
 * Basis 'measured' once any kind could be measured. What is left of an event after taking frame rounding (Δ²/12) off
 * is held at a fifth of the frame interval at least: the same picture chosen every time does not prove a perfect eye
 * (our default). A followed point differs from the coach's mark by both their errors, of which the coach's is taken off,
 * and a machine that is always off the same way errs by that too; it is never held to be better than a marked one.
 */
export function markingErrorFromRemarkings(
  entries: readonly Remarking[],
  fallback: MarkingError,
): MarkingError {
  const eventSd = { ...fallback.eventSd };
  const eventFreedom: Partial<Record<EventKind, number>> = {};
  const landmarkFreedom: Partial<Record<LandmarkName, number>> = {};
  const events = eventKinds.filter((kind) => {
    const own = entries.flatMap((each) => (each.of === 'event' && each.kind === kind ? [each] : []));
    const found = repeatability(own);
    if (!found || found.tooFew) return false;
    const square = own.reduce((sum, each) => sum + each.frameInterval ** 2, 0) / own.length;
    const floor = 0.2 * Math.sqrt(square);
    eventFreedom[kind] = found.pairs - 1;
    eventSd[kind] = Math.max(floor, Math.sqrt(Math.max(0, found.typicalError ** 2 - square / 12)));
    return true;
  });
  const pointsOf = (
    of: 'landmark' | 'followed',
    landmark: LandmarkName,
  ): { readonly typical: number; readonly bias: number; readonly freedom: number } | null => {
    const own = entries.flatMap((each) => (each.of === of && each.landmark === landmark ? [each] : []));
    const axes = [...new Set(own.map(({ axis }) => axis))].map((axis) =>
      repeatability(own.filter((each) => each.axis === axis)),
    );
    let squares = 0;
    let biases = 0;
    let freedom = 0;
    for (const found of axes) {
      if (!found || found.tooFew) return null;
      squares += found.typicalError ** 2;
      biases += found.bias ** 2;
      freedom += found.pairs - 1;
    }
    return axes.length === 0
      ? null
      : { typical: Math.sqrt(squares / axes.length), bias: Math.sqrt(biases / axes.length), freedom };
  };
  const landmarkSd = { ...fallback.landmarkSd };
  const landmarks = landmarkNames.filter((landmark) => {
    const found = pointsOf('landmark', landmark);
    if (found) {
      landmarkSd[landmark] = Math.max(finestPixels, found.typical);
      landmarkFreedom[landmark] = found.freedom;
    }
    return found !== null;
  });
  const followedSd = { ...fallback.followedSd };
  const followed = landmarkNames.filter((landmark) => {
    const found = pointsOf('followed', landmark);
    const marked = landmarkSd[landmark];
    const both =
      found !== null ? 2 * found.typical ** 2 + found.bias ** 2 - marked ** 2 : followedSd[landmark] ** 2;
    followedSd[landmark] = Math.max(marked, Math.sqrt(Math.max(0, both)));
    return found !== null;
  });
  const any = events.length + landmarks.length + followed.length > 0;
  return {
    ...fallback,
    basis: any ? 'measured' : fallback.basis,
    measured: { events, landmarks, followed },
    ...(any ? { freedom: { events: eventFreedom, landmarks: landmarkFreedom } } : {}),
    eventSd,
    landmarkSd,
    followedSd,
  };
}
