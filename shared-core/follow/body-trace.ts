import type { LandmarkName } from '../marks/landmark';
import type { Swim } from '../swim-file/swim-schema';
import { type ClipClock, realTimeOf } from '../timeline/clip-clock';
import { sdOfConfidence } from './follow-confidence';

/** One landmark's place over frames, marked and surely followed points together. */
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
 * Followed points less likely than this to lie within 2 % of the body length are of no use even for a proposal: a
 * proposal carries its spread and waits for the coach, so it may lean on points that no reading would use. Our choice.
 */
const worthALook = 0.5;

/**
 * A landmark's trace in picture pixels, to propose moments from: the coach's points where there are any, followed ones
 * that are worth a look, nothing elsewhere. Frames ascending.
 */
export function bodyTrace(
  swim: Pick<Swim, 'postures' | 'followed'>,
  landmark: LandmarkName,
  clock: ClipClock,
  bodyLength: number,
): BodyTrace {
  const points = new Map<number, readonly [x: number, y: number, sd: number]>();
  for (const run of swim.followed) {
    if (run.landmark !== landmark) continue;
    run.points.forEach(([x, y, confidence], i) => {
      if (confidence >= worthALook) points.set(run.frame + i, [x, y, sdOfConfidence(confidence, bodyLength)]);
    });
  }
  for (const posture of swim.postures) {
    const point = posture.points[landmark];
    if (point) points.set(posture.frame, [point.x, point.y, markedSdShare * bodyLength]);
    else if (posture.hidden.includes(landmark)) points.delete(posture.frame);
  }
  const frames = [...points.keys()].sort((a, b) => a - b);
  const column = (k: 0 | 1 | 2): readonly number[] => frames.map((frame) => points.get(frame)?.[k] ?? 0);
  return {
    frames,
    times: frames.map((frame): number => realTimeOf(clock, frame)),
    x: column(0),
    y: column(1),
    sd: column(2),
  };
}
