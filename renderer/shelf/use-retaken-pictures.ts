import { useCallback, useEffect, useRef } from 'react';
import type { HostClient } from '../host/host-client';
import { pictureOf } from './thumbnail';

/** Takes a swim's shelf picture from its film and keeps it with the swim; false when it can't be had. */
async function retake(host: HostClient, swimId: string, signal: AbortSignal): Promise<boolean> {
  const read = await host.call('swim/read', { id: swimId }, signal);
  if (!read.ok) return false;
  const { track } = read.value.swim.clip;
  const picture = await pictureOf({ address: host.clipAddress(swimId), track }, signal);
  return picture !== null && !signal.aborted && (await host.sendThumbnail(swimId, picture)).ok;
}

/** Asks for the picture of a swim that has none, as when they were removed: one film at a time, each once a visit. */
export function useRetakenPictures(host: HostClient): (swimId: string) => Promise<boolean> {
  const asked = useRef(new Map<string, Promise<boolean>>());
  const last = useRef<Promise<unknown>>(Promise.resolve());
  const leaving = useRef(new AbortController());
  useEffect(() => {
    leaving.current = new AbortController();
    const { current } = asked;
    return () => {
      leaving.current.abort();
      current.clear();
    };
  }, []);
  return useCallback(
    (swimId) => {
      const before = asked.current.get(swimId);
      if (before) return before;
      const { signal } = leaving.current;
      const taken = last.current.then(() => (signal.aborted ? false : retake(host, swimId, signal)));
      asked.current.set(swimId, taken);
      last.current = taken;
      return taken;
    },
    [host],
  );
}
