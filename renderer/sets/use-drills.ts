import { useCallback, useEffect, useMemo, useState } from 'react';
import type { HostError } from '#core/host-contract/host-error';
import { type DrillBook, firstDrillBook } from '#core/practice/drill-file';
import { drillLibrary } from '#core/practice/drill-library';
import type { Drill } from '#core/practice/drill-schema';
import type { HostClient } from '../host/host-client';
import { changeDrills } from './change-drills';

export interface Drills {
  readonly book: DrillBook;
  /** Every drill there is, the coach's own in place of one of the library they rewrote. */
  readonly all: readonly Drill[];
  readonly trouble: HostError | null;
  /** Changes the coach's own; the answer is the trouble there was. */
  readonly change: (change: (book: DrillBook) => DrillBook) => Promise<HostError | null>;
}

/** The drills to choose from: the library's and the coach's own. */
export function useDrills(host: HostClient): Drills {
  const [book, setBook] = useState<DrillBook>(firstDrillBook);
  const [trouble, setTrouble] = useState<HostError | null>(null);
  useEffect(() => {
    let gone = false;
    void host.call('drills/read', {}).then((read) => {
      if (gone) return;
      if (read.ok) setBook(read.value.book);
      else setTrouble(read.error);
    });
    return () => {
      gone = true;
    };
  }, [host]);
  const change = useCallback(
    async (edit: (book: DrillBook) => DrillBook): Promise<HostError | null> => {
      const done = await changeDrills(host, edit);
      if (done.ok) setBook(done.value);
      return done.ok ? null : done.error;
    },
    [host],
  );
  const all = useMemo(() => {
    const own = new Map(book.drills.map((each) => [each.id, each]));
    const rest = book.drills.filter(({ id }) => !drillLibrary.some((each) => each.id === id));
    return [...drillLibrary.map((each) => own.get(each.id) ?? each), ...rest];
  }, [book]);
  return useMemo(() => ({ book, all, trouble, change }), [book, all, trouble, change]);
}
