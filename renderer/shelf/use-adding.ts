import { useCallback, useState } from 'react';
import type { ArrivedClip } from '#core/host-contract/operations/clip-operations';
import type { HostClient } from '../host/host-client';
import { makeId } from '../host/make-id';
import type { ClipToAdd } from './clip-to-add';

export interface AddQueue {
  readonly current: ClipToAdd | null;
  readonly waiting: number;
  readonly addFiles: (files: readonly File[]) => Promise<void>;
  /** `copied`: what the coach is offered first, a copy in the library or the clip where it lies. */
  readonly addReferred: (clip: ArrivedClip, copied: boolean) => void;
  /** The current clip has become a swim, or was left out. */
  readonly next: (swimId: string | null) => Promise<void>;
}

/**
 * A picked file where it lies, if the host can read it there: nothing is copied before it is added. Else the file in hand; what
 * is wrong with it is told when it is looked at.
 */
async function clipOf(host: HostClient, file: File): Promise<ClipToAdd> {
  const key = makeId();
  const path = host.pathOf(file);
  const found = path === null ? null : await host.call('clip/refer', { path });
  return found?.ok
    ? { kind: 'referred', key, clip: found.value, copied: true, made: file.lastModified }
    : { kind: 'file', key, file };
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
      async (files) => {
        const found = await Promise.all(files.map((file) => clipOf(host, file)));
        setQueue((before) => [...before, ...found]);
      },
      [host],
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
