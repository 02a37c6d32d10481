import { z } from 'zod';
import { idSchema } from '../../swim-file/swim-schema';

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
  /** Forgets an arrived clip that became no swim, and removes its bytes from the library. */
  'clip/discard': {
    input: z.strictObject({ clipId: idSchema }),
    output: z.strictObject({}),
  },
} as const;
