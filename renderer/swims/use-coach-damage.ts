import { useEffect } from 'react';
import { openSwimWords } from '#core/words/open-swim';
import type { HostClient } from '../host/host-client';
import type { Say } from '../ui/notices';

/**
 * Says once where the coach's own marking error can't be read, for places with readings of several swims, as the shelf: they
 * take it for assumed.
 */
export function useCoachDamage(host: HostClient, say: Say): void {
  useEffect(() => {
    const leaving = new AbortController();
    void host.call('coach/read', {}, leaving.signal).then((read) => {
      if (!leaving.signal.aborted && read.ok && read.value.setAside !== null)
        say(openSwimWords('yourMarkingError', { setAside: read.value.setAside }));
    });
    return () => leaving.abort();
  }, [host, say]);
}
