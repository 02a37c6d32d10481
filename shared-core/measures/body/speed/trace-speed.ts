import { type LandmarkName, landmarkNames } from '../../../marks/landmark';
import { fitLine } from '../../../signal/fit-line';
import type { MissingReason, ReadingNote, ReadingUnit } from '../../reading';
import type { BodyContext } from '../context/body-context';
import { centreOfMassNotes, centreOfMassTrace } from '../context/centre-of-mass';
import type { CycleFrame } from '../context/cycle-frame';
import type { LandmarkTrace } from '../points/landmark-trace';
import { fitInDoubtOfPeriod } from '../wave/fit-in-doubt-of-period';
import { cyclesMissing, type LandmarkWave, landmarkWave } from '../wave/landmark-wave';
import { movedCamera } from '../context/moved-camera';
import { notFromSide } from '../context/side-view';

export interface TraceSpeed {
  /** Pool units a second, positive along travel. */
  readonly value: number;
  /** From the marks alone. */
  readonly variance: number;
  readonly of: 'centre-of-mass' | 'hip';
  /** The fitted movement along travel; null when the postures are too sparse for more than a straight line. */
  readonly wave: LandmarkWave | null;
  readonly frames: readonly number[];
  readonly landmarks: readonly LandmarkName[];
  readonly cycles: number;
  readonly eventIds: readonly string[];
}

/** What is said of a speed, and of everything made from it: that a hip is not the whole body, or what a body table is of. */
export const speedNotes = (context: BodyContext, { of }: Pick<TraceSpeed, 'of'>): readonly ReadingNote[] =>
  of === 'hip' ? ['hip-not-centre-of-mass'] : centreOfMassNotes(context);

const landmarksOf = (of: TraceSpeed['of']): readonly LandmarkName[] =>
  of === 'hip' ? ['hip'] : landmarkNames;

export type SpeedResult =
  | { readonly ok: true; readonly speed: TraceSpeed }
  | { readonly ok: false; readonly reasons: readonly [MissingReason, ...MissingReason[]] };

/**
 * Harmonics of the kick fitted to the surge at most: speed magnifies noise with frequency, so fewer than for height.
 * Our default.
 */
const surgeMultiples = 2;

const kept = new WeakMap<CycleFrame, Partial<Record<TraceSpeed['of'], SpeedResult>>>();

/** Mean speed of the hip or the centre of mass along travel, over whole cycles. */
export function speedOf(context: BodyContext, of: TraceSpeed['of']): SpeedResult {
  const view = notFromSide(context);
  if (view) return { ok: false, reasons: [view] };
  if (!context.transform.travelKnown)
    return { ok: false, reasons: [{ code: 'needs-scene', item: 'travel' }] };
  const moved = movedCamera(context);
  if (moved) return { ok: false, reasons: [moved] };
  const { cycles } = context;
  if (!cycles) return measureSpeed(context, of);
  const known = kept.get(cycles) ?? {};
  const result = known[of] ?? measureSpeed(context, of);
  kept.set(cycles, { ...known, [of]: result });
  return result;
}

/** Speed of the centre of mass where all landmarks carry it, else of the hip. */
export function bestSpeed(context: BodyContext): SpeedResult {
  const centre = speedOf(context, 'centre-of-mass');
  if (centre.ok && centre.speed.wave) return centre;
  const hip = speedOf(context, 'hip');
  return hip.ok ? hip : centre.ok ? centre : hip;
}

function measureSpeed(context: BodyContext, of: TraceSpeed['of']): SpeedResult {
  const missing = cyclesMissing(context);
  if (missing) return { ok: false, reasons: [missing] };
  const trace = of === 'hip' ? context.trace('hip') : centreOfMassTrace(context);
  const result = landmarkWave(context, 'hip', trace, trace.x, surgeMultiples);
  if (result.ok) {
    const { wave } = result;
    const p = wave.pooled.coefficients.length;
    return {
      ok: true,
      speed: {
        value: wave.pooled.coefficients[1] as number,
        variance:
          wave.sd ** 2 * (fitInDoubtOfPeriod(wave).unitCovariance[p + 1] ?? 0) +
          cameraVariance(context, wave.frames),
        of,
        wave,
        frames: wave.frames,
        landmarks: landmarksOf(of),
        cycles: wave.frame.spans.length,
        eventIds: wave.frame.eventIds,
      },
    };
  }
  const sparse = sparseSpeed(context, trace);
  return sparse
    ? { ok: true, speed: { ...sparse, of, landmarks: landmarksOf(of) } }
    : { ok: false, reasons: result.reasons };
}

/** Straight line through the postures from the first cycle's start to the last one's end. */
function sparseSpeed(
  context: BodyContext,
  trace: LandmarkTrace,
): Omit<TraceSpeed, 'of' | 'landmarks'> | null {
  const frame = context.cycles;
  const first = frame?.spans[0];
  const last = frame?.spans.at(-1);
  if (!frame || !first || !last) return null;
  const inside = trace.times.flatMap((t, i) =>
    t >= first.start - 1e-9 && t <= last.end + 1e-9
      ? [
          {
            t,
            x: trace.x[i] as number,
            frame: trace.frames[i] as number,
            weight: trace.followed?.slowWeights[i] ?? 1,
          },
        ]
      : [],
  );
  const span = (inside.at(-1)?.t ?? 0) - (inside[0]?.t ?? 0);
  // less than a cycle between first and last posture would read the surge of a kick as speed
  if (span < 0.95 * frame.period) return null;
  const t = inside.map((p) => p.t);
  const x = inside.map((p) => p.x);
  const weights = inside.map((p) => p.weight);
  const line = fitLine(t, x, weights);
  if (!line) return null;
  const n = inside.length;
  const rest = inside.reduce((sum, p) => sum + p.weight * (p.x - line.intercept - line.slope * p.t) ** 2, 0);
  // the surge within cycles is not modelled here: where it shows in the residuals it counts as noise
  const noise = n > 3 ? Math.max(trace.sd ** 2, rest / (n - 2)) : trace.sd ** 2;
  return {
    value: line.slope,
    variance:
      line.slopeVariance * noise +
      cameraVariance(
        context,
        inside.map((p) => p.frame),
      ),
    wave: null,
    frames: inside.map((p) => p.frame),
    cycles: frame.spans.length,
    eventIds: frame.eventIds,
  };
}

/** What the camera's path adds to the variance of a speed over frames, pool units² a second². */
function cameraVariance(context: BodyContext, frames: readonly number[]): number {
  const { camera, transform } = context;
  const from = frames[0];
  const to = frames.at(-1);
  if (camera.state !== 'carried' || from === undefined || to === undefined) return 0;
  return camera.speedVariance(from, to, context.time(to) - context.time(from)) * transform.perPixel ** 2;
}

export function speedUnit(context: BodyContext): ReadingUnit {
  return context.unit === 'm' ? 'm/s' : context.unit === 'L' ? 'L/s' : 'px/s';
}
