import { useCallback, useEffect, useRef, useState } from 'react';
import type { HostError } from '#core/host-contract/host-error';
import type { OperationOutput } from '#core/host-contract/operations';
import type { HostClient } from '../host/host-client';

export type Library = OperationOutput<'library/open'>;

export interface OpenedLibrary {
  /** What was last read; it stays on screen while it can't be read again. `pending` swims are still to come. */
  readonly library: Library | null;
  readonly trouble: HostError | null;
  readonly load: () => Promise<void>;
}

/** Milliseconds between looks while swims are still being read; each look costs more the more there are. */
const lookAgainAfter = 700;

/** Swims that fill a large window several times over: enough for the first picture of a long shelf. */
const firstPicture = 60;

/** The library as it is on disk: read when the shelf appears, when asked, and when the window is come back to. */
export function useLibrary(host: HostClient): OpenedLibrary {
  const [library, setLibrary] = useState<Library | null>(null);
  const [trouble, setTrouble] = useState<HostError | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null);
  const begun = useRef(false);
  const load = useCallback(async () => {
    const first = !begun.current;
    begun.current = true;
    const opened = await host.call('library/open', {
      partly: true,
      ...(first ? { atMost: firstPicture } : {}),
    });
    if (opened.ok) setLibrary(opened.value);
    setTrouble(opened.ok ? null : opened.error);
    if (timer.current) clearTimeout(timer.current);
    timer.current =
      opened.ok && opened.value.pending > 0
        ? setTimeout(() => void load(), first ? 0 : lookAgainAfter)
        : null;
  }, [host]);
  useEffect(() => {
    void load();
    const back = (): void => {
      if (document.visibilityState === 'visible') void load();
    };
    document.addEventListener('visibilitychange', back);
    return () => {
      document.removeEventListener('visibilitychange', back);
      if (timer.current) clearTimeout(timer.current);
    };
  }, [load]);
  return { library, trouble, load };
}
