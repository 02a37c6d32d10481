import { firstAtOrAfter } from '../../../signal/first-at-or-after';
import type { WaveFit } from '../../../signal/fit-wave';
import { newtonStep, waveValue } from '../../../signal/wave-value';
import type { BodyContext } from '../context/body-context';
import { type LandmarkWave, landmarkWave } from './landmark-wave';
import { type LandmarkTrace, sampleVariance } from '../points/landmark-trace';
import type { TimedEvent } from '../../timed-event';

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

/** Seconds by which times worked out along different ways may differ: a sample on the edge of a window is within it. */
const rounding = 1e-6;

/**
 * Height of the toe at each marked kick top and bottom: the vertex of a parabola through the postures around the event
 * when five or more lie within 0.1 of the kick's period, else the posture on the event's frame, or the
 * nearest one within 0.06 of the period; events with neither are left out.
 *
 * A kick is no parabola, and a posture beside the turn is lower than the turn. Where the toe's wave can be fitted it tells
 * how much either misses, which is given back: what the parabola misses of the fitted wave's own turn, or half the
 * wave's bend times the mean square by which the posture strays.
 */
export function toeExtremes(context: BodyContext, kickPeriod: number): readonly ToeExtreme[] {
  const trace = context.trace('toe');
  const fitted = landmarkWave(context, 'toe', trace, trace.y);
  const wave = fitted.ok ? fitted.wave : null;
  return context.events.flatMap((event): ToeExtreme[] => {
    const kind = event.event.kind;
    if (kind !== 'kick-top' && kind !== 'kick-bottom') return [];
    const found = vertexNear(trace, event.time, reach * kickPeriod, kind === 'kick-top' ? 1 : -1, wave);
    const side = kind === 'kick-top' ? 'top' : 'bottom';
    if (found) return [{ event, kind: side, ...found, straySquare: 0 }];
    const near = nearest(trace, event.time);
    if (near < 0) return [];
    const time = trace.times[near] as number;
    const off = time - event.time;
    if (Math.abs(off) > beside * kickPeriod + rounding) return [];
    const straySquare = event.variance + off ** 2;
    const here = {
      event,
      kind: side,
      y: trace.y[near] as number,
      variance: sampleVariance(trace, near),
    } as const;
    if (!wave) return [{ ...here, straySquare }];
    const lost = (Math.abs(waveValue(wave.pooled, wave.clock(event.time), 2, false)) / 2) * straySquare;
    // the loss goes with the square of a normal error, whose variance is twice the square of its mean
    return [
      {
        ...here,
        y: here.y + (side === 'top' ? lost : -lost),
        variance: here.variance + 2 * lost ** 2,
        straySquare: 0,
      },
    ];
  });
}

/**
 * Two samples are as near as each other where their distances differ by less than this share of the gap between them: the
 * rounding of timestamps must not choose. Our default.
 */
const asNear = 0.01;

/** Index of the sample nearest in time, of two as near the earlier; −1 of none. */
function nearest(trace: LandmarkTrace, time: number): number {
  const after = firstAtOrAfter(trace.times, time);
  const before = after - 1;
  if (after >= trace.times.length) return before;
  if (before < 0) return after;
  const since = time - (trace.times[before] as number);
  const until = (trace.times[after] as number) - time;
  return since - until <= asNear * (since + until) ? before : after;
}

function vertexNear(
  trace: LandmarkTrace,
  time: number,
  window: number,
  sign: 1 | -1,
  wave: LandmarkWave | null,
): { y: number; variance: number } | null {
  const t: number[] = [];
  const y: number[] = [];
  let followed = false;
  for (let i = firstAtOrAfter(trace.times, time - window - rounding); i < trace.times.length; i++) {
    const tau = ((trace.times[i] as number) - time) / window;
    if (tau > 1 + rounding / window) break;
    t.push(tau);
    followed ||= trace.followed?.is[i] ?? false;
    y.push(trace.y[i] as number);
  }
  const parabola = t.length < 5 ? null : parabolaOn(t);
  const top = parabola?.(y);
  if (!top || !(sign * top.bend < 0) || Math.abs(top.at) > 0.8) return null;
  const noise = trace.sd ** 2;
  const wobble = noise * top.slopeUnitVariance;
  const white = noise * top.unitVariance;
  // neighbouring followed points are off together: no number of them knows the height better than one
  const variance = followed ? Math.max(white, (trace.followed?.sd ?? 0) ** 2) : white;
  const lift = wobble / (4 * Math.abs(top.bend) + wobble / (0.8 * Math.sqrt(white || 1)));
  const turn = wave && turnNear(wave.pooled, wave.clock(time + top.at * window), window);
  const model = turn && parabola?.(t.map((tau) => waveValue(wave.pooled, wave.clock(time + tau * window))));
  const missed = turn && model && sign * model.bend < 0 ? turn.y - model.y : 0;
  return { y: top.y - sign * lift + missed, variance };
}

interface Vertex {
  /** Place of the vertex and height there. */
  readonly at: number;
  readonly y: number;
  /** Half the second derivative. */
  readonly bend: number;
  /** Variances of height and slope at that place, for samples of variance 1. */
  readonly unitVariance: number;
  readonly slopeUnitVariance: number;
}

/** Least-squares parabola on these times, to be laid through any heights at them; null where they are bunched. */
function parabolaOn(t: readonly number[]): ((y: readonly number[]) => Vertex | null) | null {
  const n = t.length;
  const m1 = mean(t);
  const centred = t.map((v) => v - m1);
  const m2 = mean(centred.map((v) => v * v));
  const m3 = mean(centred.map((v) => v ** 3));
  if (!(m2 > 0.1)) return null;
  // orthogonal polynomials of degree 0, 1, 2 on these times
  const p2 = centred.map((v) => v * v - (m3 / m2) * v - m2);
  const norm2 = p2.reduce((sum, v) => sum + v * v, 0);
  if (!(norm2 > 1e-9)) return null;
  return (y) => {
    const c0 = mean(y);
    const c1 = centred.reduce((sum, v, i) => sum + v * (y[i] as number), 0) / (n * m2);
    const c2 = p2.reduce((sum, v, i) => sum + v * (y[i] as number), 0) / norm2;
    if (c2 === 0) return null;
    const vertex = m3 / m2 / 2 - c1 / (2 * c2);
    const q2 = vertex * vertex - (m3 / m2) * vertex - m2;
    const slope2 = 2 * vertex - m3 / m2;
    return {
      at: vertex + m1,
      y: c0 + c1 * vertex + c2 * q2,
      bend: c2,
      unitVariance: 1 / n + vertex ** 2 / (n * m2) + q2 ** 2 / norm2,
      slopeUnitVariance: 1 / (n * m2) + slope2 ** 2 / norm2,
    };
  };
}

/** The turn of the fitted wave, its drift left aside, beside a time, by Newton's steps; null where it has none there. */
function turnNear(wave: WaveFit, from: number, window: number): { readonly y: number } | null {
  let time = from;
  for (let i = 0; i < 4; i++) {
    const move = newtonStep(wave, time, 1);
    if (move === null) return null;
    time += move;
    if (!(Math.abs(time - from) < window)) return null;
  }
  return { y: waveValue(wave, time) };
}

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;
