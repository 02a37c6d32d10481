import { firstAtOrAfter } from '../../signal/first-at-or-after';
import type { BodyContext } from './body-context';
import { type LandmarkTrace, sampleVariance } from './landmark-trace';
import type { TimedEvent } from './cycle-frame';

/** The toe at one marked kick top or bottom. */
export interface ToeExtreme {
  readonly event: TimedEvent;
  readonly kind: 'top' | 'bottom';
  readonly y: number;
  readonly variance: number;
  /**
   * Mean square of the time, s², by which the posture read strays from the true extreme: the event's own error, and
   * how far the posture lies from the event. 0 where the vertex of the path itself was read.
   */
  readonly straySquare: number;
}

/** Share of a kick's period to each side of an event within which the toe's path is taken as a parabola. Our default. */
const reach = 0.1;

/** A posture this share of a kick's period beside the event still stands for it. Our default. */
const beside = 0.06;

/**
 * Height of the toe at each marked kick top and bottom: the vertex of a parabola through the postures around the event
 * when five or more lie within 0.1 of the kick's period, else the posture on the event's frame, or the
 * nearest one within 0.06 of the period; events with neither are left out.
 */
export function toeExtremes(context: BodyContext, kickPeriod: number): readonly ToeExtreme[] {
  const trace = context.trace('toe');
  return context.events.flatMap((event): ToeExtreme[] => {
    const kind = event.event.kind;
    if (kind !== 'kick-top' && kind !== 'kick-bottom') return [];
    const found = vertexNear(trace, event.time, reach * kickPeriod, kind === 'kick-top' ? 1 : -1);
    const side = kind === 'kick-top' ? 'top' : 'bottom';
    if (found) return [{ event, kind: side, ...found, straySquare: 0 }];
    const near = nearest(trace, event.time);
    if (near < 0) return [];
    const off = (trace.times[near] ?? 0) - event.time;
    if (Math.abs(off) > beside * kickPeriod) return [];
    return [
      {
        event,
        kind: side,
        y: trace.y[near] ?? 0,
        variance: sampleVariance(trace, near),
        straySquare: event.variance + off ** 2,
      },
    ];
  });
}

/** Index of the sample nearest in time; −1 of none. */
function nearest(trace: LandmarkTrace, time: number): number {
  const after = firstAtOrAfter(trace.times, time);
  const before = after - 1;
  if (after >= trace.times.length) return before;
  if (before < 0) return after;
  return time - (trace.times[before] ?? 0) <= (trace.times[after] ?? 0) - time ? before : after;
}

function vertexNear(
  trace: LandmarkTrace,
  time: number,
  window: number,
  sign: 1 | -1,
): { y: number; variance: number } | null {
  const t: number[] = [];
  const y: number[] = [];
  let followed = false;
  for (let i = firstAtOrAfter(trace.times, time - window); i < trace.times.length; i++) {
    const tau = ((trace.times[i] ?? 0) - time) / window;
    if (tau > 1) break;
    t.push(tau);
    followed ||= trace.followed?.is[i] ?? false;
    y.push(trace.y[i] ?? 0);
  }
  const n = t.length;
  if (n < 5) return null;
  const m1 = mean(t);
  const centred = t.map((v) => v - m1);
  const m2 = mean(centred.map((v) => v * v));
  const m3 = mean(centred.map((v) => v ** 3));
  if (!(m2 > 0.1)) return null;
  // orthogonal polynomials of degree 0, 1, 2 on these times
  const p2 = centred.map((v) => v * v - (m3 / m2) * v - m2);
  const norm2 = p2.reduce((sum, v) => sum + v * v, 0);
  if (!(norm2 > 1e-9)) return null;
  const c0 = mean(y);
  const c1 = centred.reduce((sum, v, i) => sum + v * (y[i] ?? 0), 0) / (n * m2);
  const c2 = p2.reduce((sum, v, i) => sum + v * (y[i] ?? 0), 0) / norm2;
  if (!(sign * c2 < 0)) return null;
  const vertex = m3 / m2 / 2 - c1 / (2 * c2);
  if (Math.abs(vertex + m1) > 0.8) return null;
  const q2 = vertex * vertex - (m3 / m2) * vertex - m2;
  const noise = trace.sd ** 2;
  const slope2 = 2 * vertex - m3 / m2;
  const wobble = noise * (1 / (n * m2) + slope2 ** 2 / norm2);
  const white = noise * (1 / n + vertex ** 2 / (n * m2) + q2 ** 2 / norm2);
  // neighbouring followed points are off together: no number of them knows the height better than one
  const variance = followed ? Math.max(white, (trace.followed?.sd ?? 0) ** 2) : white;
  const lift = wobble / (4 * Math.abs(c2) + wobble / (0.8 * Math.sqrt(white || 1)));
  return { y: c0 + c1 * vertex + c2 * q2 - sign * lift, variance };
}

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;
