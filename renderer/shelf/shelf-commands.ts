import type { Command } from '../app/command';
import { openRoute } from '../app/use-route';
import type { Bin } from './use-bin';
import { focusedSwim } from './use-grid-keys';

interface Reach {
  readonly bin: Bin;
  readonly pick: () => void;
  readonly openPath: () => void;
  readonly search: () => void;
}

const onTile = (): boolean => focusedSwim() !== null;

/** Everything on the shelf that has a key. Arrows, Enter and Tab are the grid's and the browser's own. */
export function shelfCommands({ bin, pick, openPath, search }: Reach): readonly Command[] {
  return [
    { id: 'search', label: 'Search swims', keys: ['/'], kind: 'view', run: search },
    { id: 'add', label: 'Add swims', keys: ['a'], kind: 'never', run: pick },
    { id: 'add-path', label: 'Use a file where it lies', keys: ['Shift+A'], kind: 'never', run: openPath },
    {
      id: 'walk',
      label: 'Go from swim to swim',
      keys: [],
      told: ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'],
      kind: 'view',
      run: () => undefined,
    },
    {
      id: 'open',
      label: 'Open the swim',
      keys: [],
      told: ['Enter'],
      kind: 'view',
      run: () => undefined,
    },
    {
      id: 'pair',
      label: 'Pair the swim with another',
      keys: ['p'],
      kind: 'view',
      enabled: onTile,
      run: () => {
        const id = focusedSwim();
        if (id) openRoute({ screen: 'pair', ids: [id] });
      },
    },
    {
      id: 'remove',
      label: 'Move the swim to the bin',
      keys: ['Delete'],
      kind: 'undoable',
      enabled: onTile,
      run: () => {
        const id = focusedSwim();
        if (id) bin.remove(id);
      },
    },
    {
      id: 'restore',
      label: 'Bring back the swim last moved to the bin',
      keys: ['$mod+z'],
      kind: 'never',
      enabled: bin.canRestore,
      run: bin.restoreLast,
    },
  ];
}
