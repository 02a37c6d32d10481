import type { Command } from '../ui/command';
import { openRoute } from '../ui/use-route';
import type { OpenSwim } from '../open-swim/open-swim';
import { benchWords } from '#core/words/bench';

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
      label: benchWords('pairSwimAnother'),
      keys: ['Shift+P'],
      kind: 'view',
      run: () => openRoute({ screen: 'pair', ids: [document.swim().id] }),
    },
    { id: 'video', label: benchWords('saveVideo'), keys: ['Shift+V'], kind: 'never', run: reach.openVideo },
    { id: 'still', label: benchWords('saveStill'), keys: ['i'], kind: 'never', run: reach.openStill },
    {
      id: 'export',
      label: benchWords('exportPicturesData'),
      keys: ['Shift+X'],
      kind: 'never',
      run: reach.openExport,
    },
    {
      id: 'handout',
      label: benchWords('makeHandoutSwimmer'),
      keys: ['Shift+H'],
      kind: 'view',
      run: () => openRoute({ screen: 'handout', ids: [document.swim().id] }),
    },
    {
      id: 'mark-again',
      label: benchWords('markAgainWithout'),
      keys: ['Shift+M'],
      kind: 'view',
      run: reach.openRemarking,
    },
  ];
}
