import { useEffect, useState } from 'react';
import { mainWay } from '#core/practice/main-way';
import type { SeasonSwim } from '#core/practice/season-swim';
import type { HostClient } from '../host/host-client';
import { readSeasonSwims } from './read-season-swims';
import type { SeasonData } from './use-season';

/** By swimmer what is read so far of their main way of swimming, and whether more is to come. */
export type SquadSwims = ReadonlyMap<
  string,
  { readonly swims: readonly SeasonSwim[]; readonly pending: boolean }
>;

/** Reads the squad's swims one after the other; a swimmer appears when all of theirs are read. */
export function useSquadReadings(host: HostClient, data: SeasonData): SquadSwims {
  const [read, setRead] = useState<SquadSwims>(new Map());
  useEffect(() => {
    const leaving = new AbortController();
    const readAll = async (): Promise<void> => {
      for (const swimmer of data.squad.swimmers) {
        const own = mainWay(
          data.swims.filter(({ card }) => card.swimmerId === swimmer.id),
          data.drills,
        );
        const swims: SeasonSwim[] = [];
        for await (const swim of readSeasonSwims(host, own, { swimmer, drills: data.drills }, leaving.signal))
          if (swim) swims.push(swim);
        if (leaving.signal.aborted) return;
        setRead((before) => new Map([...before, [swimmer.id, { swims, pending: false }]]));
      }
    };
    setRead(new Map());
    void readAll();
    return () => leaving.abort();
  }, [host, data]);
  return read;
}
