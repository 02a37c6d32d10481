import type { Practice } from '#core/practice/practice-schema';
import type { Command } from '../ui/command';
import { undoCommands } from '../ui/undo-buttons';
import type { KeptDocument } from '../documents/kept-document';
import { moveItem } from './practice-steps';

/** Everything on a practice's plan that has a key. */
export function planCommands(plan: {
  readonly document: KeptDocument<Practice>;
  /** The item that is open; null: none. */
  readonly openId: string | null;
  readonly addPlain: () => void;
  readonly addDrill: () => void;
  readonly remove: (id: string) => void;
  readonly print: () => Promise<void>;
  readonly toDeck: () => void;
  readonly toList: () => void;
}): readonly Command[] {
  const { document, openId, addPlain, addDrill, remove, print, toDeck, toList } = plan;
  const onItem = (): boolean => openId !== null;
  return [
    { id: 'add', label: 'Add an item', keys: ['a'], kind: 'undoable', run: addPlain },
    { id: 'add-drill', label: 'Add a drill', keys: ['d'], kind: 'view', run: addDrill },
    {
      id: 'up',
      label: 'Move the open item up',
      keys: ['Alt+ArrowUp'],
      kind: 'undoable',
      enabled: onItem,
      run: () => void (openId && document.run(moveItem(openId, -1))),
    },
    {
      id: 'down',
      label: 'Move the open item down',
      keys: ['Alt+ArrowDown'],
      kind: 'undoable',
      enabled: onItem,
      run: () => void (openId && document.run(moveItem(openId, 1))),
    },
    {
      id: 'remove',
      label: 'Take the open item off the card',
      keys: ['Delete'],
      kind: 'undoable',
      enabled: onItem,
      run: () => void (openId && remove(openId)),
    },
    { id: 'print', label: 'Practice card as PDF', keys: ['p'], kind: 'never', run: print },
    { id: 'deck', label: 'On deck', keys: ['l'], kind: 'view', run: toDeck },
    { id: 'list', label: 'All practices', keys: ['Escape'], kind: 'view', run: toList },
    ...undoCommands(document),
  ];
}
