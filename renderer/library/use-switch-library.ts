import { useCallback } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { Say } from '../ui/notices';
import type { HostClient } from '../host/host-client';

/** Goes over to another library; the window then begins anew on its shelf, as nothing it has read is of that one. */
export function useSwitchLibrary(host: HostClient, say: Say): (path: string) => Promise<void> {
  return useCallback(
    async (path) => {
      const switched = await host.call('library/switch', { path });
      if (!switched.ok) {
        const { what, todo } = errorWords(switched.error);
        say(`${what} ${todo}`);
        return;
      }
      window.location.hash = '#/';
      window.location.reload();
    },
    [host, say],
  );
}
