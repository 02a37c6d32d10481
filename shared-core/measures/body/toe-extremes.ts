import type { BodyContext, LandmarkTrace } from './body-context';
import type { TimedEvent } from './cycle-frame';

/** The toe at one marked kick top or bottom. */
export interface ToeExtreme {
  readonly event: TimedEvent;
  readonly kind: 'top' | 'bottom';
  readonly y: number;
  readonly variance: number;
  /** True when `y` was read on the marked frame itself, which misses the true extreme by the event's own error. */
  readonly onFrame: boolean;
}

/** Share of a kick's period to each side of an event within which the toe's path is taken as a parabola. Our default. */
const reach = 0.12;

/**
 * Height of the toe at each marked kick top and bottom: the vertex of a parabola through the postures around the event
 * when five or more lie within 0.12 of the kick's period, else the posture on the event's frame; events with neither
 * are left out.
 */
export function toeExtremes(context: BodyContext, kickPeriod: number): readonly ToeExtreme[] {
  const trace = context.trace('toe');
  return context.events.flatMap((event): ToeExtreme[] => {
    const kind = event.event.kind;
    if (kind !== 'kick-top' && kind !== 'kick-bottom') return [];
    const found = vertexNear(trace, event.time, reach * kickPeriod, kind === 'kick-top' ? 1 : -1);
    const side = kind === 'kick-top' ? 'top' : 'bottom';
    if (found) return [{ event, kind: side, ...found, onFrame: false }];
    const posture = context.byFrame.get(event.event.frame);
    const toe = posture && context.pool(posture, 'toe');
    return toe ? [{ event, kind: side, y: toe.y, variance: trace.sd ** 2, onFrame: true }] : [];
  });
}

function vertexNear(
  trace: LandmarkTrace,
  time: number,
  window: number,
  sign: 1 | -1,
): { y: number; variance: number } | null {
  const t: number[] = [];
  const y: number[] = [];
  // times rise: step to the window by halves
  let low = 0;
  let high = trace.times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((trace.times[middle] ?? 0) < time - window) low = middle + 1;
    else high = middle;
  }
  for (let i = low; i < trace.times.length; i++) {
    const tau = ((trace.times[i] ?? 0) - time) / window;
    if (tau > 1) break;
    t.push(tau);
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
  const variance = noise * (1 / n + vertex ** 2 / (n * m2) + q2 ** 2 / norm2);
  const lift = wobble / (4 * Math.abs(c2) + wobble / (0.8 * Math.sqrt(variance || 1)));
  return { y: c0 + c1 * vertex + c2 * q2 - sign * lift, variance };
}

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;
