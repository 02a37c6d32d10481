import { useCallback, useState } from 'react';
import type { ArrivedClip } from '#core/host-contract/operations/clip-operations';
import type { HostClient } from '../host/host-client';
import { makeId } from '../host/make-id';
import type { ClipToAdd } from './clip-to-add';

export interface AddQueue {
  readonly current: ClipToAdd | null;
  readonly waiting: number;
  readonly addFiles: (files: readonly File[]) => void;
  /** `copied`: what the coach is offered first, a copy in the library or the clip where it lies. */
  readonly addReferred: (clip: ArrivedClip, copied: boolean) => void;
  /** The current clip has become a swim, or was left out. */
  readonly next: (swimId: string | null) => Promise<void>;
}

/** Clips waiting to be looked at, one after the other; the bench opens after the last one. */
export function useAdding(
  host: HostClient,
  load: () => Promise<void>,
  onOpen: (swimId: string) => void,
): AddQueue {
  const [queue, setQueue] = useState<readonly ClipToAdd[]>([]);
  const current = queue[0] ?? null;
  return {
    current,
    waiting: Math.max(0, queue.length - 1),
    addFiles: useCallback(
      (files) =>
        setQueue((before) => [
          ...before,
          ...files.map((file): ClipToAdd => ({ kind: 'file', key: makeId(), file })),
        ]),
      [],
    ),
    addReferred: useCallback(
      (clip, copied) => setQueue((before) => [...before, { kind: 'referred', key: makeId(), clip, copied }]),
      [],
    ),
    next: async (swimId) => {
      if (swimId === null && current?.kind === 'referred')
        await host.call('clip/discard', { clipId: current.clip.clipId });
      const last = queue.length === 1;
      // the next clip's card begins from the squad as it is now, so the squad comes first
      if (swimId !== null && !last) await load();
      setQueue((before) => before.slice(1));
      if (swimId !== null && last) onOpen(swimId);
    },
  };
}
