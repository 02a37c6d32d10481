import { useCallback, useEffect, useMemo } from 'react';
import { useStore } from 'zustand';
import { addToQueue } from '../see/see-queue';
import { windowSeeQueue } from '../see/window-see-queue';
import type { Choice } from './use-choice';

/** The choice, and a way to have the swimmer looked for in it; the shelf is read again as each swim is done. */
export function useSeeChosen(
  choice: Choice,
  load: () => Promise<void>,
): Choice & { readonly see: () => void } {
  const { ids, none } = choice;
  const waiting = useStore(windowSeeQueue, (state) => state.waiting);
  // biome-ignore lint/correctness/useExhaustiveDependencies: one swim fewer waits, and its tile says something else
  useEffect(() => {
    void load();
  }, [waiting, load]);
  const see = useCallback(() => {
    addToQueue(windowSeeQueue, ids);
    none();
  }, [ids, none]);
  return useMemo(() => ({ ...choice, see }), [choice, see]);
}
