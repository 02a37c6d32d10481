import { useEffect } from 'react';
import type { ShelfMemory } from './shelf-memory';

/** Coming back from the bench, the coach is where they left. */
export function useComingBack(
  isOpen: boolean,
  memory: ShelfMemory,
  focusTile: (swimId: string) => void,
): void {
  useEffect(() => {
    const from = memory.getState().swimId;
    if (isOpen && from) focusTile(from);
  }, [isOpen, memory, focusTile]);
}
