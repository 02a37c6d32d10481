import { useCallback } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { HostError } from '#core/host-contract/host-error';
import type { Say } from '../ui/notices';
import { swumWords } from '#core/swim-file/card-words';
import { sentence } from '../card/sentence';
import type { HostClient } from '../host/host-client';
import { neighbourOf } from './use-grid-keys';
import type { OpenedLibrary } from '../swims/use-library';
import type { ShelfUndo } from './use-shelf-undo';
import { shelfWords } from '#core/words/shelf';

const both = (error: HostError): string => `${errorWords(error).what} ${errorWords(error).todo}`;

/** Moves swims to the bin, one or many in one step. Nothing is asked, because it can be undone. */
export function useBin(
  host: HostClient,
  { library, load }: OpenedLibrary,
  say: Say,
  undo: ShelfUndo,
  focusTile: (swimId: string) => void,
): (swimIds: readonly string[]) => void {
  const remove = useCallback(
    async (ids: readonly string[]) => {
      const [first] = ids;
      if (first === undefined) return;
      const next = neighbourOf(first);
      const moved = await host.call('swims/remove', { ids: [...ids] });
      if (!moved.ok) return say(both(moved.error));
      const { done, failed } = moved.value;
      await load();
      if (next && !done.includes(next)) focusTile(next);
      const trouble = failed[0]
        ? ` ${shelfWords('stayed', { failed: failed.length, both: both(failed[0].error) })}`
        : '';
      const card = library?.swims.find((each) => each.id === done[0])?.card;
      if (!card) return say(trouble.trim());
      const words = shelfWords('swimsDone', {
        done: done.length,
        sentence: sentence(swumWords(card).what),
        swimmerName: card.swimmerName || shelfWords('noOneNamed'),
      });
      const are = done.length === 1 ? 'is' : 'are';
      undo.did(shelfWords('bin', { words, are, trouble }), {
        undone: shelfWords('backShelf', { words, are }),
        undo: async () => {
          const back = await host.call('swims/restore', { ids: done });
          if (!back.ok) return both(back.error);
          await load();
          if (done[0]) focusTile(done[0]);
          return back.value.failed[0] ? both(back.value.failed[0].error) : null;
        },
      });
    },
    [host, library, load, say, undo, focusTile],
  );
  return useCallback((ids) => void remove(ids), [remove]);
}
