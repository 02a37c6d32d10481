import { success } from '#core/host-contract/host-error';
import type { memoryOperations } from '#core/host-contract/operations/memory-operations';
import type { HandlersOf, HostParts } from './handlers';

export function memoryHandlers({ remembered }: HostParts): HandlersOf<typeof memoryOperations> {
  return {
    'memory/read': async () => success({ kept: { ...(await remembered.read()) } }),
    'memory/keep': async ({ key, text }) => {
      const done = await remembered.keep(key, text);
      return done.ok ? success({}) : done;
    },
  };
}
