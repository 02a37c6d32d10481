import { z } from 'zod';
import { eventKinds } from '#core/marks/event-kind';
import { landmarkNames } from '#core/marks/landmark';

const point = z.strictObject({ x: z.number(), y: z.number() });
const line = z.strictObject({ a: point, b: point });

/** One whole butterfly stroke, entry to next entry. Gaps in milliseconds, positive: leg later. */
const strokeSchema = z.strictObject({
  entry: z.number(),
  nextEntry: z.number(),
  breathing: z.boolean(),
  /** kick-top 1 − entry, kick-bottom 1 − catch, kick-top 2 − shoulder, kick-bottom 2 − exit. */
  gapsMs: z.tuple([z.number(), z.number(), z.number(), z.number()]),
  /** Entry and catch, pull, push, recovery: percent of the stroke. */
  phasesPercent: z.tuple([z.number(), z.number(), z.number(), z.number()]),
});

/** What is true of a drawn clip. Points are shown-picture pixels, x and y by landmark, one row a picture. */
export const truthSchema = z.strictObject({
  format: z.literal('submark-sample-truth'),
  version: z.literal(1),
  invented: z.literal(true),
  clip: z.string(),
  /** Playback seconds per real second. */
  slowdown: z.number().positive(),
  frameTimes: z.strictObject({ ticksPerSecond: z.number().int(), starts: z.array(z.number().int()) }),
  /** Real seconds of each picture from the first. */
  realTimes: z.array(z.number()),
  metresPerPixel: z.number().positive(),
  /** Picture row of the still surface in the swimmer's plane, which is level. */
  surfaceRow: z.number(),
  surface: line,
  /** The front edge of the floor's dark line, which is level. */
  level: line,
  travel: z.enum(['left', 'right']),
  /** Metres the camera has been carried along by each picture; null when it stands still. */
  carriedMetres: z.array(z.number()).nullable(),
  /** Fingertip to toe in streamline, metres. */
  bodyLengthMetres: z.number().positive(),
  landmarks: z.array(z.enum(landmarkNames)),
  points: z.array(z.array(z.number())),
  events: z.array(z.strictObject({ kind: z.enum(eventKinds), time: z.number() })),
  /** Whole strokes in the clip; empty for kicks alone. */
  strokes: z.array(strokeSchema),
  model: z.strictObject({
    kickFrequencyHz: z.number(),
    strokeRatePerMinute: z.number().nullable(),
    /** Mean speed of the hip over whole cycles, m/s. */
    meanSpeed: z.number(),
    /** Hip speed over time t in a cycle of period T: meanSpeed · (1 + Σ swing_k cos(2πk t/T − phase_k)). */
    speedWave: z.array(z.strictObject({ swing: z.number(), phase: z.number() })),
    /** 100 · SD/mean of that speed: 100 · √(Σ swing_k²/2). */
    speedVariationPercent: z.number(),
    /** Speed of the kick's wave down the body, m/s. */
    waveSpeed: z.number(),
    /** Highest minus lowest place of each landmark over a cycle, metres. */
    undulationMetres: z.record(z.enum(landmarkNames), z.number()),
    toePeakToPeakMetres: z.number(),
    /** Mean height of kick tops over the line between neighbouring bottoms, and the reverse. */
    kickAmplitudeMetres: z.number(),
    /** Medians over the strokes of the nearest kick to each hand event, milliseconds; positive: leg later. */
    kick1TopToEntryMs: z.number().nullable(),
    kick2BottomToExitMs: z.number().nullable(),
  }),
});
export type Truth = z.infer<typeof truthSchema>;
export type TrueStroke = z.infer<typeof strokeSchema>;
