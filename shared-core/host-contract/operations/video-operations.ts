import { z } from 'zod';
import { videoPlanSchema } from '../../video/video-plan';
import { startedJobSchema } from './job-operations';

/** What the job of `video/export` ends with. */
export const videoMadeSchema = z.strictObject({
  name: z.string(),
  path: z.string(),
  pictures: z.number().int().positive(),
  format: z.enum(['mp4', 'webm']),
});
export type VideoMade = z.infer<typeof videoMadeSchema>;

export const videoOperations = {
  /** Makes a video of one swim or two in the library's export folder; never over another file, whole or not at all. */
  'video/export': { input: z.strictObject({ plan: videoPlanSchema }), output: startedJobSchema },
} as const;
