import { useCallback, useEffect, useState } from 'react';
import type { HostError } from '#core/host-contract/host-error';
import type { Say } from '../ui/notices';
import type { HostClient } from '../host/host-client';
import { type KeptKind, type OpenKept, openKept } from './open-kept';
import { documentsWords } from '#core/words/documents';

export type Opening<T> =
  | { readonly state: 'opening' }
  | { readonly state: 'failed'; readonly error: HostError; readonly again: () => void }
  | { readonly state: 'open'; readonly kept: OpenKept<T> };

/** A document of the library, open while the screen is; its changes are written before it goes. */
export function useKept<T extends { readonly id: string; readonly changedAt: string }>(
  kind: KeptKind<T>,
  host: HostClient,
  id: string,
  say: Say,
): Opening<T> {
  const [opening, setOpening] = useState<
    { readonly kept: OpenKept<T> } | { readonly error: HostError } | null
  >(null);
  const [round, setRound] = useState(0);
  const again = useCallback(() => setRound((each) => each + 1), []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new round opens it once more
  useEffect(() => {
    let gone = false;
    let open: OpenKept<T> | null = null;
    void openKept(kind, host, window.localStorage, id, () => new Date()).then((read) => {
      if (gone) {
        if (read.ok) void read.value.close();
        return;
      }
      if (!read.ok) return setOpening({ error: read.error });
      open = read.value;
      setOpening({ kept: open });
      if (open.replayed) say(documentsWords('changesLastTime'));
    });
    return () => {
      gone = true;
      void open?.close();
      setOpening(null);
    };
  }, [kind, host, id, say, round]);
  if (!opening) return { state: 'opening' };
  return 'kept' in opening
    ? { state: 'open', kept: opening.kept }
    : { state: 'failed', error: opening.error, again };
}
