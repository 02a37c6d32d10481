import { useCallback, useEffect, useRef, useState } from 'react';
import type { HostError } from '#core/host-contract/host-error';
import type { OperationInput, OperationOutput } from '#core/host-contract/operations';
import type { HostClient } from '../host/host-client';

export type Library = OperationOutput<'library/open'>;

export interface OpenedLibrary {
  /** What was last read; it stays on screen while it can't be read again. `pending` swims are still to come. */
  readonly library: Library | null;
  readonly trouble: HostError | null;
  readonly load: () => Promise<void>;
}

/** Milliseconds between looks while swims are still being read; each look costs more the more there are. */
const lookAgainAfter = 1000;

/** Swims that fill a large window several times over: enough for the first picture of a long shelf. */
const firstPicture = 60;

type Asked = 'top' | 'remembered' | 'checked';

const question: Readonly<Record<Asked, OperationInput<'library/open'>>> = {
  top: { partly: true, atMost: firstPicture },
  remembered: { partly: true, remembered: true },
  checked: { partly: true },
};

/**
 * The library as it is on disk: read when the shelf appears, when asked, and when the window is come back to. A shelf that
 * appears shows its top, then all that the index remembers, then what a look at the disk makes of it.
 */
export function useLibrary(host: HostClient): OpenedLibrary {
  const [library, setLibrary] = useState<Library | null>(null);
  const [trouble, setTrouble] = useState<HostError | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null);
  const ask = useCallback(
    async (asked: Asked): Promise<void> => {
      const opened = await host.call('library/open', question[asked]);
      if (opened.ok) setLibrary(opened.value);
      setTrouble(opened.ok ? null : opened.error);
      if (timer.current) clearTimeout(timer.current);
      timer.current = null;
      if (!opened.ok) return;
      const { pending, readingsPending, checked } = opened.value;
      const again = (next: Asked, after: number): void => {
        timer.current = setTimeout(() => void ask(next), after);
      };
      if (asked === 'top' && pending > 0) again('remembered', 0);
      else if (pending + readingsPending > 0) again('remembered', lookAgainAfter);
      else if (!checked) again('checked', 0);
    },
    [host],
  );
  const load = useCallback(() => ask('checked'), [ask]);
  useEffect(() => {
    void ask('top');
    const back = (): void => {
      if (document.visibilityState === 'visible') void load();
    };
    document.addEventListener('visibilitychange', back);
    return () => {
      document.removeEventListener('visibilitychange', back);
      if (timer.current) clearTimeout(timer.current);
    };
  }, [ask, load]);
  return { library, trouble, load };
}
