import type { LandmarkName } from '../marks/landmark';
import type { Swim } from '../swim-file/swim-schema';
import { type ClipClock, realTimeOf } from '../timeline/clip-clock';
import type { Point } from '../units/point';
import { expectedErrorShare } from './expected-error';

/** One landmark's place over frames, marked, followed and seen points together. */
export interface BodyTrace {
  readonly frames: readonly number[];
  /** Real seconds. */
  readonly times: readonly number[];
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** Standard deviation of one axis, pixels. */
  readonly sd: readonly number[];
}

/** A marked point is taken to be off by this share of the body length: about what a careful hand does. Our default. */
const markedSdShare = 0.004;

/**
 * Followed points less likely than this to lie within 2 % of the body length say nothing at all. A proposal carries its
 * spread and waits for the coach, so it leans on many points that no reading would use. Our choice.
 */
const worthALook = 0.005;

/**
 * A landmark's trace in picture pixels, to propose moments from: the coach's points where there are any, followed ones
 * that are worth a look, then seen ones, nothing elsewhere. Frames ascending.
 *
 * @param steady where a picture point would lie if the camera had stood still; null: not known
 * @param least followed points of less confidence are left out
 */
export function bodyTrace(
  swim: Pick<Swim, 'postures' | 'followed' | 'seen'>,
  landmark: LandmarkName,
  clock: ClipClock,
  bodyLength: number,
  steady: (frame: number, point: Point) => Point | null = (_, point) => point,
  least: number = worthALook,
): BodyTrace {
  const points = new Map<number, { readonly at: Point; readonly sd: number }>();
  for (const run of swim.seen) {
    if (run.landmark !== landmark) continue;
    run.points.forEach(([x, y, sd], i) => {
      points.set(run.frame + i, { at: { x, y }, sd });
    });
  }
  for (const run of swim.followed) {
    if (run.landmark !== landmark) continue;
    run.points.forEach(([x, y, confidence], i) => {
      if (confidence >= least)
        points.set(run.frame + i, { at: { x, y }, sd: proposalSd(confidence, bodyLength) });
    });
  }
  for (const posture of swim.postures) {
    const at = posture.points[landmark];
    if (at) points.set(posture.frame, { at, sd: markedSdShare * bodyLength });
    else if (posture.hidden.includes(landmark)) points.delete(posture.frame);
  }
  const rows = [...points]
    .sort(([a], [b]) => a - b)
    .flatMap(([frame, { at, sd }]) => {
      const stood = steady(frame, at);
      return stood ? [{ frame, at: stood, sd }] : [];
    });
  return {
    frames: rows.map(({ frame }) => frame),
    times: rows.map(({ frame }): number => realTimeOf(clock, frame)),
    x: rows.map(({ at }) => at.x),
    y: rows.map(({ at }) => at.y),
    sd: rows.map(({ sd }) => sd),
  };
}

/** How far a followed point may be off when moments are proposed from it: one axis, pixels. */
const proposalSd = (confidence: number, bodyLength: number): number =>
  bodyLength * Math.max(markedSdShare, expectedErrorShare(confidence));
