import { useEffect } from 'react';
import { useStore } from 'zustand';
import type { HostClient } from '../host/host-client';
import { runSeeQueue } from './run-see-queue';
import { startSeer } from './start-seer';
import { windowSeeQueue } from './window-see-queue';

/** Sees what waits while `free`: on screens that step through film, stepping goes first. */
export function useSeeQueue(host: HostClient, free: boolean): void {
  const anyWaiting = useStore(windowSeeQueue, ({ waiting }) => waiting.length > 0);
  useEffect(() => {
    if (!free || !anyWaiting) return;
    const stopped = new AbortController();
    void runSeeQueue(windowSeeQueue, { host, startSeer, now: () => new Date() }, stopped.signal);
    return () => stopped.abort();
  }, [host, free, anyWaiting]);
}
