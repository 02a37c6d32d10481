import { useMemo } from 'react';
import { useStore } from 'zustand';
import { isDoubtful } from '#core/measures/doubtful';
import { timesDoubtWords } from '#core/measures/kick-doubt-words';
import type { Reading } from '#core/measures/reading';
import { useOpenSwim, useSwim } from '../open-swim/open-swim';

/** Tells which readings are doubtful: by themselves, or all of them as the film's times are. */
export function doubtfulAmong(readings: readonly Reading[], slowdown: number): (id: string) => boolean {
  const all = timesDoubtWords(readings, slowdown) !== null;
  const own = new Set(
    readings.flatMap((each) => (each.status === 'computed' && isDoubtful(each) ? [each.id] : [])),
  );
  return (id) => all || own.has(id);
}

/** The same of the swim on the bench. */
export function useDoubtfulReadings(): (id: string) => boolean {
  const readings = useStore(useOpenSwim().readings.store, (state) => state.readings);
  const slowdown = useSwim((swim) => swim.clip.slowdown.factor);
  return useMemo(() => doubtfulAmong(readings, slowdown), [readings, slowdown]);
}
