import type { jobOperations } from '#core/host-contract/operations/job-operations';
import type { HandlersOf, HostParts } from './handlers';

export function jobHandlers({ jobs }: HostParts): HandlersOf<typeof jobOperations> {
  return {
    'job/look': async ({ jobId }) => jobs.look(jobId),
    'job/cancel': async ({ jobId }) => jobs.cancel(jobId),
  };
}
