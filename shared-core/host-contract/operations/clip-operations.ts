import { z } from 'zod';
import { idSchema } from '../../swim-file/swim-schema';
import { startedJobSchema } from './job-operations';

const fileName = z.string().min(1).max(255);

export const arrivedClipSchema = z.strictObject({
  /** Names the arrived or referred clip until a swim is created from it. */
  clipId: idSchema,
  name: fileName,
  fingerprint: z.strictObject({
    bytes: z.number().int(),
    edgesSha256: z.string(),
  }),
});
export type ArrivedClip = z.infer<typeof arrivedClipSchema>;

export const clipOperations = {
  /** Use a clip where it lies: the coach gives its path. Nothing is copied. */
  'clip/refer': {
    input: z.strictObject({ path: z.string().min(1).max(4096) }),
    output: arrivedClipSchema,
  },
  /** How many bytes of a clip that is being sent have arrived; null before the first, and once it has ended. */
  'clip/arriving': {
    input: z.strictObject({ arrivalId: idSchema }),
    output: z.strictObject({ bytes: z.number().int().nonnegative().nullable() }),
  },
  /** Stops a clip that is being sent, and removes what arrived of it: who sends may not be able to break off. */
  'clip/stop-arriving': {
    input: z.strictObject({ arrivalId: idSchema }),
    output: z.strictObject({}),
  },
  /**
   * Copies a clip that was referred to into the library, so that it no longer depends on its place; the job ends with the
   * clip as it then is, under the same id. When it fails or is cancelled, the clip is as it was.
   */
  'clip/copy': {
    input: z.strictObject({ clipId: idSchema }),
    output: startedJobSchema,
  },
  /** Forgets an arrived clip that became no swim, and removes its bytes from the library. */
  'clip/discard': {
    input: z.strictObject({ clipId: idSchema }),
    output: z.strictObject({}),
  },
} as const;
