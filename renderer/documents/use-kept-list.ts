import { useCallback, useEffect, useRef, useState } from 'react';
import type { HostError, Result } from '#core/host-contract/host-error';
import type { Say } from '../ui/notices';
import type { HostClient } from '../host/host-client';
import { documentsWords } from '#core/words/documents';

/** How the documents of one kind are listed, and moved to their bin and back. */
export interface ListedKind<Listed> {
  list(host: HostClient): Promise<Result<Listed>>;
  remove(host: HostClient, id: string): Promise<Result<unknown>>;
  restore(host: HostClient, id: string): Promise<Result<unknown>>;
  /** Said when one is back, as in "The trial is back." */
  readonly backWords: string;
}

export interface KeptList<Listed> {
  readonly listed: Listed | null;
  readonly trouble: HostError | null;
  readonly setTrouble: (trouble: HostError) => void;
  readonly load: () => Promise<void>;
  /** Moves one to the bin; `words` say so, and undo is offered. Nothing is asked, because it can be undone. */
  readonly remove: (id: string, words: string) => Promise<void>;
  readonly restoreLast: () => void;
  readonly canRestore: () => boolean;
}

/** All documents of one kind, with a bin. */
export function useKeptList<Listed>(kind: ListedKind<Listed>, host: HostClient, say: Say): KeptList<Listed> {
  const [listed, setListed] = useState<Listed | null>(null);
  const [trouble, setTrouble] = useState<HostError | null>(null);
  const removed = useRef<readonly string[]>([]);
  const load = useCallback(async () => {
    const read = await kind.list(host);
    if (read.ok) setListed(read.value);
    setTrouble(read.ok ? null : read.error);
  }, [kind, host]);
  useEffect(() => void load(), [load]);
  const restore = useCallback(
    async (id: string) => {
      const done = await kind.restore(host, id);
      if (!done.ok) {
        setTrouble(done.error);
        return;
      }
      removed.current = removed.current.filter((each) => each !== id);
      say(kind.backWords);
      await load();
    },
    [kind, host, load, say],
  );
  const remove = useCallback(
    async (id: string, words: string) => {
      const done = await kind.remove(host, id);
      if (!done.ok) {
        setTrouble(done.error);
        return;
      }
      removed.current = [...removed.current, id];
      await load();
      say(words, { label: documentsWords('undo'), run: () => void restore(id) });
    },
    [kind, host, load, restore, say],
  );
  return {
    listed,
    trouble,
    setTrouble,
    load,
    remove,
    restoreLast: useCallback(() => {
      const last = removed.current.at(-1);
      if (last) void restore(last);
    }, [restore]),
    canRestore: useCallback(() => removed.current.length > 0, []),
  };
}
