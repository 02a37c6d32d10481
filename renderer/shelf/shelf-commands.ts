import type { Command } from '../ui/command';
import { openRoute } from '../ui/use-route';
import type { Choice } from './use-choice';
import { focusedSwim } from './use-grid-keys';
import type { ShelfUndo } from './use-shelf-undo';
import { shelfWords } from '#core/words/shelf';

interface Reach {
  readonly remove: (swimIds: readonly string[]) => void;
  readonly choice: Choice & { readonly see: () => void };
  readonly undo: ShelfUndo;
  readonly changeCards: () => void;
  readonly pick: () => void;
  readonly openPath: () => void;
  readonly search: () => void;
}

const onTile = (): boolean => focusedSwim() !== null;

/** Everything on the shelf that has a key. Arrows, Enter and Tab are the grid's and the browser's own. */
export function shelfCommands({
  remove,
  choice,
  undo,
  changeCards,
  pick,
  openPath,
  search,
}: Reach): readonly Command[] {
  return [
    { id: 'search', label: shelfWords('searchSwims'), keys: ['/'], kind: 'view', run: search },
    { id: 'add', label: shelfWords('addSwims2'), keys: ['a'], kind: 'never', run: pick },
    {
      id: 'add-path',
      label: shelfWords('useFileWhereLies'),
      keys: ['Shift+A'],
      kind: 'never',
      run: openPath,
    },
    {
      id: 'walk',
      label: shelfWords('goFromSwimSwim'),
      keys: [],
      told: ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'],
      kind: 'view',
      run: () => undefined,
    },
    {
      id: 'open',
      label: shelfWords('openSwim'),
      keys: [],
      told: ['Enter'],
      kind: 'view',
      run: () => undefined,
    },
    {
      id: 'pair',
      label: shelfWords('pairSwimAnother'),
      keys: ['p'],
      kind: 'view',
      enabled: onTile,
      run: () => {
        const id = focusedSwim();
        if (id) openRoute({ screen: 'pair', ids: [id] });
      },
    },
    ...choosing(choice),
    {
      id: 'change-cards',
      label: shelfWords('changeCardsChosen'),
      keys: ['e'],
      kind: 'undoable',
      enabled: () => choice.ids.length > 0,
      run: changeCards,
    },
    {
      id: 'remove',
      label: shelfWords('moveSwimOrAll'),
      keys: ['Delete'],
      kind: 'undoable',
      enabled: () => onTile() || choice.ids.length > 0,
      run: () => {
        const id = focusedSwim();
        if (choice.ids.length > 0) remove(choice.ids);
        else if (id) remove([id]);
      },
    },
    {
      id: 'see-chosen',
      label: shelfWords('seeChosenCommand'),
      keys: ['Shift+S'],
      kind: 'never',
      enabled: () => choice.ids.length > 0,
      run: choice.see,
    },
    {
      id: 'restore',
      label: shelfWords('undoWhatLast'),
      keys: ['$mod+z'],
      kind: 'never',
      enabled: undo.canUndo,
      run: undo.undoLast,
    },
  ];
}

/** Choosing swims, to change several together. */
function choosing(choice: Choice): readonly Command[] {
  return [
    {
      id: 'choose',
      label: shelfWords('chooseSwimChange'),
      keys: ['x'],
      kind: 'view',
      enabled: onTile,
      run: () => {
        const id = focusedSwim();
        if (id) choice.choose(id, false);
      },
    },
    {
      id: 'choose-along',
      label: shelfWords('chooseAllFrom'),
      keys: ['Shift+X'],
      kind: 'view',
      enabled: onTile,
      run: () => {
        const id = focusedSwim();
        if (id) choice.choose(id, true);
      },
    },
    {
      id: 'choose-all',
      label: shelfWords('chooseAllSwims'),
      keys: ['$mod+a'],
      kind: 'view',
      run: choice.all,
    },
    {
      id: 'choose-none',
      label: shelfWords('chooseNone'),
      keys: ['Escape'],
      kind: 'view',
      enabled: () => choice.ids.length > 0,
      run: choice.none,
    },
  ];
}
