import { z } from 'zod';
import { squadSchema } from '../swim-file/squad-schema';
import { cardSchema, idSchema, swimSchema } from '../swim-file/swim-schema';

/** A revision names the exact bytes on disk (hex of their SHA-256); writing demands the one last read. */
const revision = z.string().regex(/^[0-9a-f]{64}$/);
const fileName = z.string().min(1).max(255);

export const swimSummarySchema = z.strictObject({
  id: idSchema,
  revision,
  changedAt: z.string(),
  card: cardSchema,
  clip: z.strictObject({
    originalName: z.string(),
    width: z.number(),
    height: z.number(),
    frames: z.number(),
    /** Length in real seconds. */
    seconds: z.number(),
    slowdown: z.number(),
  }),
  eventCount: z.number().int(),
  postureCount: z.number().int(),
  hasThumbnail: z.boolean(),
  clipStatus: z.enum(['present', 'missing', 'changed']),
  /** A few readings for the card; computed from the marks by shared-core, never stored. */
  headline: z.array(
    z.strictObject({
      id: z.string(),
      value: z.number(),
      half: z.number(),
      unit: z.string(),
    }),
  ),
});
export type SwimSummary = z.infer<typeof swimSummarySchema>;

const libraryProblemSchema = z.strictObject({
  folder: z.string(),
  code: z.enum(['swim-damaged', 'swim-newer-version', 'cannot-read']),
  detail: z.record(z.string(), z.union([z.string(), z.number()])),
});

export const coachSchema = z.strictObject({
  format: z.literal('submark-coach'),
  version: z.literal(1),
  /** One entry per re-marked item: what it was, and second minus first mark (seconds, or pixels per axis). */
  remarkings: z
    .array(
      z.strictObject({
        item: z.string().max(40),
        axis: z.enum(['time', 'x', 'y']),
        difference: z.number(),
        on: z.iso.datetime(),
        swimId: idSchema,
      }),
    )
    .max(100_000),
});
export type CoachFile = z.infer<typeof coachSchema>;

const arrivedClipSchema = z.strictObject({
  /** Names the arrived or referred clip until a swim is created from it. */
  clipId: idSchema,
  name: fileName,
  fingerprint: z.strictObject({
    bytes: z.number().int(),
    edgesSha256: z.string(),
  }),
});
export type ArrivedClip = z.infer<typeof arrivedClipSchema>;

/**
 * The host contract: what the window may ask of the host. Both transports carry exactly this list, and check
 * input and output against it.
 */
export const operations = {
  'library/open': {
    input: z.strictObject({}),
    output: z.strictObject({
      path: z.string(),
      swims: z.array(swimSummarySchema),
      squad: squadSchema,
      squadRevision: revision.nullable(),
      problems: z.array(libraryProblemSchema),
    }),
  },
  'swim/read': {
    input: z.strictObject({ id: idSchema }),
    output: z.strictObject({
      swim: swimSchema,
      revision,
      clipStatus: z.enum(['present', 'missing', 'changed']),
    }),
  },
  /** Atomic. `conflict` when the file on disk is not `baseRevision`; the caller's version is then kept beside it. */
  'swim/write': {
    input: z.strictObject({ swim: swimSchema, baseRevision: revision }),
    output: z.strictObject({ revision }),
  },
  /** Makes the swim's folder and moves or refers the arrived clip into it. `swim.clip.place` is set by the host. */
  'swim/create': {
    input: z.strictObject({ swim: swimSchema, clipId: idSchema }),
    output: z.strictObject({ swim: swimSchema, revision }),
  },
  /** Moves the swim's folder into the library's bin, from where `swim/restore` brings it back. */
  'swim/remove': {
    input: z.strictObject({ id: idSchema }),
    output: z.strictObject({}),
  },
  'swim/restore': {
    input: z.strictObject({ id: idSchema }),
    output: z.strictObject({}),
  },
  /** Points a swim at a clip found again; refused with `clip-changed` unless the fingerprint is the same. */
  'swim/relink': {
    input: z.strictObject({ id: idSchema, path: z.string().min(1).max(4096) }),
    output: z.strictObject({ swim: swimSchema, revision }),
  },
  /** Use a clip where it lies: the coach gives its path. Nothing is copied. */
  'clip/refer': {
    input: z.strictObject({ path: z.string().min(1).max(4096) }),
    output: arrivedClipSchema,
  },
  /** Forgets an arrived clip that became no swim, and removes its bytes from the library. */
  'clip/discard': {
    input: z.strictObject({ clipId: idSchema }),
    output: z.strictObject({}),
  },
  'squad/write': {
    input: z.strictObject({
      squad: squadSchema,
      baseRevision: revision.nullable(),
    }),
    output: z.strictObject({ revision }),
  },
  'coach/read': {
    input: z.strictObject({}),
    output: z.strictObject({
      coach: coachSchema,
      revision: revision.nullable(),
    }),
  },
  'coach/write': {
    input: z.strictObject({
      coach: coachSchema,
      baseRevision: revision.nullable(),
    }),
    output: z.strictObject({ revision }),
  },
  /** Which media tools were found and how; null when none. */
  'media/tools': {
    input: z.strictObject({}),
    output: z.strictObject({
      ffmpeg: z
        .strictObject({
          path: z.string(),
          from: z.string(),
          version: z.string(),
        })
        .nullable(),
      ffprobe: z
        .strictObject({
          path: z.string(),
          from: z.string(),
          version: z.string(),
        })
        .nullable(),
    }),
  },
} as const;

export type OperationName = keyof typeof operations;
export type OperationInput<Name extends OperationName> = z.infer<(typeof operations)[Name]['input']>;
export type OperationOutput<Name extends OperationName> = z.infer<(typeof operations)[Name]['output']>;

/**
 * Byte streams that ride beside the operations, on the same origin in both transports:
 * GET  /stream/clip/{swimId}        the clip, with Range
 * GET  /stream/arrived/{clipId}     an arrived clip that is not a swim yet, with Range
 * GET  /stream/thumbnail/{swimId}   JPEG
 * PUT  /stream/thumbnail/{swimId}   JPEG
 * PUT  /stream/arrive?name=…        a clip's bytes; answers Result<ArrivedClip>
 * PUT  /stream/export?name=…        an exported file's bytes; answers Result<{ name, path }>; never overwrites
 */
export const streamPaths = {
  clip: (swimId: string): string => `/stream/clip/${swimId}`,
  arrived: (clipId: string): string => `/stream/arrived/${clipId}`,
  thumbnail: (swimId: string): string => `/stream/thumbnail/${swimId}`,
  arrive: (name: string): string => `/stream/arrive?name=${encodeURIComponent(name)}`,
  export: (name: string): string => `/stream/export?name=${encodeURIComponent(name)}`,
} as const;

export const exportedSchema = z.strictObject({
  name: z.string(),
  path: z.string(),
});
export { arrivedClipSchema };
