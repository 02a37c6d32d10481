import { z } from 'zod';
import { idSchema } from '../../swim-file/swim-schema';
import { hostErrorSchema } from '../host-error';

/** What an operation that starts a long piece of work answers at once; `job/look` tells how it goes on. */
export const startedJobSchema = z.strictObject({ jobId: idSchema });

const jobLookSchema = z.discriminatedUnion('state', [
  z.strictObject({
    state: z.literal('running'),
    /** Part done, 0 to 1; null while it can't be told. */
    share: z.number().min(0).max(1).nullable(),
    /** What it is doing, in words; empty when there is nothing to add. */
    words: z.string().max(200),
  }),
  /** `result` is what the operation that started the job promises; its caller checks it against its schema. */
  z.strictObject({ state: z.literal('done'), result: z.unknown() }),
  z.strictObject({ state: z.literal('failed'), error: hostErrorSchema }),
  z.strictObject({ state: z.literal('cancelled') }),
]);
export type JobLook = z.infer<typeof jobLookSchema>;

export const jobOperations = {
  /** How a job stands. `not-found` for one that was never started, or that ended and was looked at long ago. */
  'job/look': { input: z.strictObject({ jobId: idSchema }), output: jobLookSchema },
  /** Asks a job to stop; what it had half made is removed. Answers at once, also for one that has ended. */
  'job/cancel': { input: z.strictObject({ jobId: idSchema }), output: z.strictObject({}) },
} as const;
