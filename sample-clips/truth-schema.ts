import { z } from 'zod';
import { eventKinds } from '#core/marks/event-kind';
import { landmarkNames } from '#core/marks/landmark';

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
  /** Picture row of the still surface, which is level. */
  surfaceRow: z.number(),
  travel: z.enum(['left', 'right']),
  /** Fingertip to toe in streamline, metres. */
  bodyLengthMetres: z.number().positive(),
  landmarks: z.array(z.enum(landmarkNames)),
  points: z.array(z.array(z.number())),
  events: z.array(z.strictObject({ kind: z.enum(eventKinds), time: z.number() })),
  model: z.strictObject({
    kickFrequencyHz: z.number(),
    strokeRatePerMinute: z.number().nullable(),
    meanSpeed: z.number(),
    toePeakToPeakMetres: z.number(),
    /** Mean height of kick tops over the line between neighbouring bottoms, and the reverse. */
    kickAmplitudeMetres: z.number(),
    /** Medians over the strokes of the nearest kick to each hand event, milliseconds; positive: leg later. */
    kick1TopToEntryMs: z.number().nullable(),
    kick2BottomToExitMs: z.number().nullable(),
  }),
});
export type Truth = z.infer<typeof truthSchema>;
