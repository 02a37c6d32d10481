import { z } from 'zod';
import { idSchema, swimSchema } from '../../swim-file/swim-schema';
import { lineageSchema, writtenSchema } from './lineage';
import { revisionSchema } from './revision';

const clipStatusSchema = z.enum(['present', 'missing', 'changed']);

export const swimOperations = {
  'swim/read': {
    input: z.strictObject({ id: idSchema }),
    output: z.strictObject({
      swim: swimSchema,
      revision: revisionSchema,
      written: writtenSchema,
      clipStatus: clipStatusSchema,
    }),
  },
  /** Whether the clip is there, and still the one the marks were made on; cheap enough to be asked every few seconds. */
  'swim/clip-status': {
    input: z.strictObject({ id: idSchema }),
    output: z.strictObject({ clipStatus: clipStatusSchema }),
  },
  /**
   * Atomic. `conflict` when the file on disk is neither `baseRevision` nor, by `lineage`, an ancestor of what is sent;
   * the caller's version is then kept beside it, one file a writer.
   */
  'swim/write': {
    input: z.strictObject({
      swim: swimSchema,
      baseRevision: revisionSchema,
      lineage: lineageSchema.optional(),
    }),
    output: z.strictObject({ revision: revisionSchema }),
  },
  /** Makes the swim's folder and moves or refers the arrived clip into it. `swim.clip.place` is set by the host. */
  'swim/create': {
    input: z.strictObject({ swim: swimSchema, clipId: idSchema }),
    output: z.strictObject({ swim: swimSchema, revision: revisionSchema }),
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
    output: z.strictObject({ swim: swimSchema, revision: revisionSchema }),
  },
} as const;
