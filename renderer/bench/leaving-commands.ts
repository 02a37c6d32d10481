import type { Command } from '../ui/command';
import { openRoute } from '../ui/use-route';
import type { OpenSwim } from '../open-swim/open-swim';

/** What the bench opens over itself. */
export interface BenchReach {
  readonly openStill: () => void;
  readonly openVideo: () => void;
  readonly openExport: () => void;
  readonly openRemarking: () => void;
}

/** From the bench to another screen, to what is saved, and to marking again. */
export function leavingCommands({ document }: OpenSwim, reach: BenchReach): readonly Command[] {
  return [
    {
      id: 'pair',
      label: 'Pair this swim with another',
      keys: ['Shift+P'],
      kind: 'view',
      run: () => openRoute({ screen: 'pair', ids: [document.swim().id] }),
    },
    { id: 'video', label: 'Save a video', keys: ['Shift+V'], kind: 'never', run: reach.openVideo },
    { id: 'still', label: 'Save a still', keys: ['i'], kind: 'never', run: reach.openStill },
    {
      id: 'export',
      label: 'Export pictures, data or the swim',
      keys: ['Shift+X'],
      kind: 'never',
      run: reach.openExport,
    },
    {
      id: 'handout',
      label: 'Make the handout for the swimmer',
      keys: ['Shift+H'],
      kind: 'view',
      run: () => openRoute({ screen: 'handout', ids: [document.swim().id] }),
    },
    {
      id: 'mark-again',
      label: 'Mark again, without seeing the first marks',
      keys: ['Shift+M'],
      kind: 'view',
      run: reach.openRemarking,
    },
  ];
}
