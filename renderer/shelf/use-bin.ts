import { useCallback, useRef } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { Say } from '../app/notices';
import { swumWords } from '../card/card-words';
import type { HostClient } from '../host/host-client';
import { focusTile, neighbourOf } from './use-grid-keys';
import type { OpenedLibrary } from './use-library';

export interface Bin {
  readonly remove: (swimId: string) => void;
  /** Brings back what was removed last; false when there is nothing. */
  readonly restoreLast: () => void;
  readonly canRestore: () => boolean;
}

/** Moving swims to the bin and back. Nothing is asked, because everything can be undone. */
export function useBin(host: HostClient, { library, load }: OpenedLibrary, say: Say): Bin {
  const removed = useRef<readonly { readonly id: string; readonly words: string }[]>([]);

  const restore = useCallback(
    async (id: string) => {
      const last = removed.current.find((each) => each.id === id);
      if (!last) return;
      removed.current = removed.current.filter((each) => each.id !== id);
      const done = await host.call('swim/restore', { id });
      if (!done.ok) {
        removed.current = [...removed.current, last];
        say(`${errorWords(done.error).what} ${errorWords(done.error).todo}`);
        return;
      }
      await load();
      focusTile(id);
      say(`${last.words} is back on the shelf.`);
    },
    [host, load, say],
  );

  const remove = useCallback(
    async (id: string) => {
      const card = library?.swims.find((each) => each.id === id)?.card;
      if (!card) return;
      const next = neighbourOf(id);
      const done = await host.call('swim/remove', { id });
      if (!done.ok) {
        say(`${errorWords(done.error).what} ${errorWords(done.error).todo}`);
        return;
      }
      const { what } = swumWords(card);
      const words = `${what.charAt(0).toUpperCase()}${what.slice(1)} of ${card.swimmerName || 'no one named'}`;
      removed.current = [...removed.current, { id, words }];
      await load();
      if (next) focusTile(next);
      say(`${words} is in the bin.`, { label: 'Undo', run: () => void restore(id) });
    },
    [host, library, load, restore, say],
  );

  return {
    remove: useCallback((id) => void remove(id), [remove]),
    restoreLast: useCallback(() => {
      const last = removed.current.at(-1);
      if (last) void restore(last.id);
    }, [restore]),
    canRestore: useCallback(() => removed.current.length > 0, []),
  };
}
