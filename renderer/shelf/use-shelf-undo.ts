import { useCallback, useMemo, useRef } from 'react';
import type { Say } from '../ui/notices';
import { shelfWords } from '#core/words/shelf';

interface Step {
  /** Takes the step back; null when it worked, else why not, in words. */
  readonly undo: () => Promise<string | null>;
  /** Said when it is back as it was. */
  readonly undone: string;
}

export interface ShelfUndo {
  /** Tells what was done and offers to take it back. */
  readonly did: (words: string, step: Step) => void;
  readonly undoLast: () => void;
  readonly canUndo: () => boolean;
}

/** What was done on the shelf, step by step; each is taken back whole, however many swims it was about. */
export function useShelfUndo(say: Say): ShelfUndo {
  const steps = useRef<readonly Step[]>([]);
  const undo = useCallback(
    async (step: Step) => {
      if (!steps.current.includes(step)) return;
      steps.current = steps.current.filter((each) => each !== step);
      const trouble = await step.undo();
      if (trouble !== null) steps.current = [...steps.current, step];
      say(trouble ?? step.undone);
    },
    [say],
  );
  const did = useCallback(
    (words: string, step: Step) => {
      steps.current = [...steps.current, step];
      say(words, { label: shelfWords('undo'), run: () => void undo(step) });
    },
    [say, undo],
  );
  return useMemo(
    () => ({
      did,
      undoLast: () => {
        const last = steps.current.at(-1);
        if (last) void undo(last);
      },
      canUndo: () => steps.current.length > 0,
    }),
    [did, undo],
  );
}
