import { useEffect, useState } from 'react';
import type { HostError } from '#core/host-contract/host-error';
import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import type { Drill } from '#core/practice/drill-schema';
import type { Practice } from '#core/practice/practice-schema';
import type { SeasonSwim } from '#core/practice/season-swim';
import type { Squad, Swimmer } from '#core/swim-file/squad-schema';
import type { HostClient } from '../host/host-client';
import { readSeasonSwims } from './read-season-swims';

export interface SeasonData {
  readonly swims: readonly SwimSummary[];
  readonly squad: Squad;
  readonly practices: readonly Practice[];
  readonly drills: readonly Drill[];
}

/** What the season is about, without any reading yet: swims by their cards, the squad, practices, the coach's drills. */
export function useSeasonData(host: HostClient): { data: SeasonData | null; trouble: HostError | null } {
  const [data, setData] = useState<SeasonData | null>(null);
  const [trouble, setTrouble] = useState<HostError | null>(null);
  useEffect(() => {
    let gone = false;
    void Promise.all([
      host.call('library/open', {}),
      host.call('practice/list', {}),
      host.call('drills/read', {}),
    ]).then(([library, practices, drills]) => {
      if (gone) return;
      if (!library.ok) return setTrouble(library.error);
      const failed = [practices, drills].find((each) => !each.ok);
      if (failed && !failed.ok) setTrouble(failed.error);
      setData({
        swims: library.value.swims,
        squad: library.value.squad,
        practices: practices.ok ? practices.value.practices.map(({ practice }) => practice) : [],
        drills: drills.ok ? drills.value.book.drills : [],
      });
    });
    return () => {
      gone = true;
    };
  }, [host]);
  return { data, trouble };
}

export interface SwimmerReadings {
  readonly swims: readonly SeasonSwim[];
  /** Swims still to be read. */
  readonly pending: number;
  readonly failed: number;
}

/** One swimmer's swims with all readings, as they come: each is read in turn and measured beside the window. */
export function useSwimmerReadings(
  host: HostClient,
  data: SeasonData | null,
  swimmer: Swimmer | null,
): SwimmerReadings {
  const [state, setState] = useState<SwimmerReadings>({ swims: [], pending: 0, failed: 0 });
  useEffect(() => {
    if (!data || !swimmer) return;
    const leaving = new AbortController();
    const own = data.swims
      .filter(({ card }) => card.swimmerId === swimmer.id)
      .sort((a, b) => (a.card.date < b.card.date ? 1 : -1));
    const read = async (): Promise<void> => {
      const done: SeasonSwim[] = [];
      let failed = 0;
      let shown = performance.now();
      const of = { swimmer, drills: data.drills };
      for await (const swim of readSeasonSwims(host, own, of, leaving.signal)) {
        if (swim) done.push(swim);
        else failed += 1;
        if (performance.now() - shown < 250) continue;
        shown = performance.now();
        setState({ swims: [...done], pending: own.length - done.length - failed, failed });
      }
      if (!leaving.signal.aborted) setState({ swims: done, pending: 0, failed });
    };
    setState({ swims: [], pending: own.length, failed: 0 });
    void read();
    return () => leaving.abort();
  }, [host, data, swimmer]);
  return state;
}
