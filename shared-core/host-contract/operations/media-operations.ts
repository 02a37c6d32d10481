import type { FrameRange } from '../../timeline/frame-range';
import { z } from 'zod';
import { frameTimesSchema, idSchema } from '../../swim-file/swim-schema';
import { startedJobSchema } from './job-operations';

const toolSchema = z.strictObject({ path: z.string(), from: z.string(), version: z.string() }).nullable();

/** One film track of a file. */
const filmTrackSchema = z.strictObject({
  /** Place among the file's film tracks, from 1. */
  number: z.number().int().positive(),
  codec: z.string().max(60),
  width: z.number().int().nonnegative(),
  height: z.number().int().nonnegative(),
});
export type FilmTrack = z.infer<typeof filmTrackSchema>;

/** What the host's media tools tell of a film that the window can't read by itself. */
export const hostFilmSchema = z.strictObject({
  container: z.string().max(60),
  codec: z.string().max(60),
  /** Shown picture in square pixels, after rotation and pixel aspect. */
  width: z.number().int().positive(),
  height: z.number().int().positive(),
  rotation: z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]),
  /** Interlaced: each field is a frame of its own, and `frameTimes` counts fields. */
  fields: z.boolean(),
  frameTimes: frameTimesSchema,
  taggedSlowdown: z.number().nullable(),
  /** About how many pictures the file promises and no longer holds. */
  lostPictures: z.number().int().nonnegative(),
  tracks: z.array(filmTrackSchema).min(1).max(1000),
  track: z.number().int().positive(),
  /** A JPEG from the middle of the film, base64; null when none could be made. */
  picture: z.string().max(4_000_000).nullable(),
});
export type HostFilm = z.infer<typeof hostFilmSchema>;

/** What decoding the whole of a film found, in frames. */
export const picturesCheckedSchema = z.strictObject({
  /** Frames in which the decoder met errors; it shows them patched up. */
  patched: z.number().int().nonnegative(),
  /** Frames that the file lists and no decoder gives. */
  missing: z.number().int().nonnegative(),
});
export type PicturesChecked = z.infer<typeof picturesCheckedSchema>;

const copyLookSchema = z.discriminatedUnion('state', [
  z.strictObject({ state: z.literal('none') }),
  z.strictObject({ state: z.literal('making'), jobId: idSchema }),
  z.strictObject({ state: z.literal('ready'), bytes: z.number() }),
]);
export type CopyLook = z.infer<typeof copyLookSchema>;

/** Frames one after another, both ends included. */
const stretchSchema: z.ZodType<FrameRange> = z.strictObject({
  first: z.number().int().nonnegative(),
  last: z.number().int().nonnegative(),
});

/** A frame as a JPEG, base64. */
const stillSchema = z.strictObject({
  frame: z.number().int().nonnegative(),
  jpeg: z.string().max(20_000_000),
});
export type Still = z.infer<typeof stillSchema>;

/** Most stills asked for at once. */
const mostStills = 12;

/** What a job that made a working copy ends with. */
export const copyMadeSchema = z.strictObject({ bytes: z.number() });

/** A petabyte is more than any disk of a coach; what is larger is a mistake. */
export const copiesLimitSchema = z.number().int().min(0).max(1e15);
const copiesRoomSchema = z.strictObject({
  files: z.number().int(),
  bytes: z.number(),
  limitBytes: copiesLimitSchema,
});
export type CopiesRoom = z.infer<typeof copiesRoomSchema>;

export const mediaOperations = {
  /** Which media tools were found and how; null when none. */
  'media/tools': {
    input: z.strictObject({}),
    output: z.strictObject({ ffmpeg: toolSchema, ffprobe: toolSchema }),
  },
  /** Starts reading what an arrived clip is, track by choice (null: the first); the job ends with a `HostFilm`. */
  'media/look': {
    input: z.strictObject({ clipId: idSchema, track: z.number().int().positive().nullable() }),
    output: startedJobSchema,
  },
  /**
   * Starts decoding the whole of an arrived clip, or of a swim's, behind all other work, to count damaged pictures; the job
   * ends with `picturesCheckedSchema`. `frames` is how many the film is known to have, two a picture where `fields` is true.
   */
  'media/check': {
    input: z.strictObject({
      of: z.union([z.strictObject({ clipId: idSchema }), z.strictObject({ swimId: idSchema })]),
      track: z.number().int().positive(),
      frames: z.number().int().nonnegative(),
      fields: z.boolean(),
    }),
    output: startedJobSchema,
  },
  /** Whether a swim has a working copy, or one is being made. */
  'copy/look': { input: z.strictObject({ id: idSchema }), output: copyLookSchema },
  /**
   * Starts making a swim's working copy, or joins the one being made; the job ends with `copyMadeSchema`. It is made from
   * `frame` on (0 unless told), where the file lets reading begin anywhere.
   */
  'copy/make': {
    input: z.strictObject({ id: idSchema, frame: z.number().int().nonnegative().optional() }),
    output: startedJobSchema,
  },
  /** Tells where the coach looks while the copy is made, and answers which pieces of it can be shown; none after it is made. */
  'copy/watch': {
    input: z.strictObject({ id: idSchema, frame: z.number().int().nonnegative() }),
    output: z.strictObject({ pieces: z.array(stretchSchema) }),
  },
  /**
   * Frames of the clip itself as JPEGs made by the host's tools, for the moment before its working copy has them: `around`
   * frames one after another, and `asked`, the one of them that has to come.
   */
  'copy/stills': {
    input: z
      .strictObject({ id: idSchema, around: stretchSchema, asked: z.number().int().nonnegative() })
      .refine(
        ({ around: { first, last }, asked }) => first <= asked && asked <= last && last - first < mostStills,
      ),
    output: z.strictObject({ stills: z.array(stillSchema) }),
  },
  /** What all working copies take, and the most they may. */
  'copy/room': { input: z.strictObject({}), output: copiesRoomSchema },
  /** Sets the most all working copies may take, 0 for none kept; the least lately used go at once. Answers what is left. */
  'copy/limit': { input: z.strictObject({ limitBytes: copiesLimitSchema }), output: copiesRoomSchema },
} as const;
