import type { LandmarkName } from '../../marks/landmark';
import type { BodyContext } from '../body/context/body-context';
import { notForward } from '../body/context/other-way';
import { unitPart } from '../body/reading/measured-reading';
import { bestSpeed, speedNotes } from '../body/speed/trace-speed';
import { markedSpeedVariance, speedBetweenMarks } from '../events/speed-between-marks';
import type { MissingReason, ReadingNote } from '../reading';

/** Mean speed of the swim in one length unit, for readings made from it. */
interface SwimSpeed {
  readonly value: number;
  /** Length unit of the value, per second. */
  readonly unit: 'm' | 'L' | 'px';
  /** Relative variances: the swim's own, and what every swim of this scene shares. */
  readonly own: number;
  readonly shared: number;
  readonly eventIds: readonly string[];
  readonly frames: readonly number[];
  readonly landmarks: readonly LandmarkName[];
  readonly notes: readonly ReadingNote[];
  readonly usesScale: boolean;
}

export type SwimSpeedResult =
  | { readonly ok: true; readonly speed: SwimSpeed }
  | { readonly ok: false; readonly reasons: readonly MissingReason[] };

/**
 * Speed between distance marks where there are two (at or after `notBefore`, real seconds), since the pool measures
 * better than a scale; else the trace speed of the centre of mass or the hip. A speed not above zero is refused.
 */
export function swimSpeed(context: BodyContext, notBefore?: number): SwimSpeedResult {
  const marked = speedBetweenMarks(context, notBefore);
  if (marked.ok) {
    const { found } = marked;
    return {
      ok: true,
      speed: {
        value: found.speed.value,
        unit: 'm',
        own: markedSpeedVariance(context, found) / found.speed.value ** 2,
        shared: 0,
        eventIds: found.eventIds,
        frames: [],
        landmarks: [],
        notes: [],
        usesScale: false,
      },
    };
  }
  const traced = bestSpeed(context);
  if (!traced.ok) return { ok: false, reasons: [marked.reason, ...traced.reasons] };
  const { value, variance, wave, eventIds, frames, landmarks } = traced.speed;
  if (!(value > 0)) return { ok: false, reasons: [notForward(context)] };
  const part = unitPart(context, 1);
  const notes: ReadingNote[] = [...speedNotes(context, traced.speed)];
  if (!wave) notes.push('sparse-trace');
  return {
    ok: true,
    speed: {
      value,
      unit: context.unit,
      own: variance / value ** 2 + part.own,
      shared: part.shared,
      eventIds,
      frames,
      landmarks,
      notes,
      usesScale: context.unit === 'm',
    },
  };
}
