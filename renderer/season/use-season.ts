import { useEffect, useState } from 'react';
import type { HostError } from '#core/host-contract/host-error';
import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import type { Drill } from '#core/practice/drill-schema';
import type { Practice } from '#core/practice/practice-schema';
import type { SeasonSwim } from '#core/practice/season-swim';
import type { Squad, Swimmer } from '#core/swim-file/squad-schema';
import { coachMarkingError } from '#core/uncertainty/coach-marking-error';
import type { HostClient } from '../host/host-client';
import { background } from '../readings/window-background';

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

interface Computed {
  /** What the readings rest on: the swim's revision, its swimmer and the coach's marking. */
  readonly of: string;
  readonly swim: SeasonSwim;
}

/** The last readings of each swim that were computed in this window; every save makes a new revision, so the last only. */
const computed = new Map<string, Computed>();
/** Swims kept at most; one takes a few kilobytes. */
const computedKept = 4000;

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
      const coach = await host.call('coach/read', {});
      const done: SeasonSwim[] = [];
      let failed = 0;
      let shown = performance.now();
      for (const [at, { id, revision, clip }] of own.entries()) {
        if (leaving.signal.aborted) return;
        const error = coach.ok ? coachMarkingError(coach.value.coach, clip.height) : null;
        const of = `${revision} ${JSON.stringify(swimmer)} ${JSON.stringify(error)}`;
        const before = computed.get(id);
        let one = before?.of === of ? before.swim : null;
        if (!one) {
          const swim = await host.call('swim/read', { id });
          if (leaving.signal.aborted) return;
          if (!swim.ok) {
            failed += 1;
            continue;
          }
          const measured = { swim: swim.value.swim, swimmer, markingError: error };
          one = await background.ask('season', { of: measured, drills: data.drills }, leaving.signal);
          if (!one) return;
          if (computed.size >= computedKept) computed.clear();
          computed.set(id, { of, swim: one });
        }
        done.push(one);
        if (performance.now() - shown > 250) {
          shown = performance.now();
          setState({ swims: [...done], pending: own.length - at - 1, failed });
        }
      }
      if (!leaving.signal.aborted) setState({ swims: done, pending: 0, failed });
    };
    setState({ swims: [], pending: own.length, failed: 0 });
    void read();
    return () => leaving.abort();
  }, [host, data, swimmer]);
  return state;
}
