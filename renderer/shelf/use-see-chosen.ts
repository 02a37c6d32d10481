import { useCallback, useEffect } from 'react';
import { useStore } from 'zustand';
import { addToQueue } from '../see/see-queue';
import { windowSeeQueue } from '../see/window-see-queue';
import type { Choice } from './use-choice';

/** Has the swimmer looked for in the chosen swims, one after the other; the shelf is read again as each is done. */
export function useSeeChosen({ ids, none }: Choice, load: () => Promise<void>): () => void {
  const waiting = useStore(windowSeeQueue, (state) => state.waiting);
  // biome-ignore lint/correctness/useExhaustiveDependencies: one swim fewer waits, and its tile says something else
  useEffect(() => {
    void load();
  }, [waiting, load]);
  return useCallback(() => {
    addToQueue(windowSeeQueue, ids);
    none();
  }, [ids, none]);
}
