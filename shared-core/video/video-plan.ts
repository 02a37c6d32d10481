import { z } from 'zod';
import { layPoints } from '../compare/lay-body-line';
import { pairModes } from '../compare/pair-clock';
import { idSchema } from '../swim-file/swim-schema';

const frame = z.number().int().nonnegative();

const lockSchema = z.discriminatedUnion('on', [
  z.strictObject({ on: z.literal('event'), id: idSchema }),
  z.strictObject({ on: z.literal('frame'), frame }),
]);

/** One swim of a video: which, how much of it, and how it is shown. */
const videoSideSchema = z.strictObject({
  swimId: idSchema,
  stretch: z
    .strictObject({ first: frame, last: frame })
    .refine(({ first, last }) => last > first, 'a stretch holds two frames at least'),
  lock: lockSchema,
  /** The frame the video begins at. */
  frame,
  mirrored: z.boolean(),
  /** Written over its picture. */
  title: z.string().max(200),
});
export type VideoSide = z.infer<typeof videoSideSchema>;

/** Everything a video is made from, beside the swims themselves. */
export const videoPlanSchema = z.strictObject({
  /** One swim, or two side by side. */
  sides: z.array(videoSideSchema).min(1).max(2),
  mode: z.enum(pairModes),
  /** The swim the other follows at the beginning. */
  lead: z.union([z.literal(0), z.literal(1)]),
  /** True seconds of the first swim to show; null: to the end of the stretches. */
  seconds: z.number().positive().max(36_000).nullable(),
  /** Seconds of video a true second takes: 1 is true speed, 4 a quarter of it. */
  slow: z.number().min(0.25).max(100),
  /** Pictures a second. */
  rate: z.number().int().min(10).max(60),
  /** Greatest width, pixels. */
  width: z.number().int().min(320).max(3840),
  sameLength: z.boolean(),
  /** Close to the swimmer, moved along with the body. */
  keepInView: z.boolean().default(false),
  lay: z.enum(layPoints).nullable(),
  show: z.strictObject({
    bodyLine: z.boolean(),
    angles: z.boolean(),
    score: z.boolean(),
    flashes: z.boolean(),
    facts: z.boolean(),
  }),
  /** The coach's own words, under the pictures; empty: none. */
  caption: z.string().max(160),
  /** The first film's own sound; only at true speed. */
  sound: z.boolean(),
  /** File name without its ending. */
  name: z.string().min(1).max(200),
});
export type VideoPlan = z.infer<typeof videoPlanSchema>;
