import { z } from 'zod';

export const mediaOperations = {
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
