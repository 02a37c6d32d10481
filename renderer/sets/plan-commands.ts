import type { Practice } from '#core/practice/practice-schema';
import type { Command } from '../ui/command';
import { undoCommands } from '../ui/undo-buttons';
import type { KeptDocument } from '../documents/kept-document';
import { moveItem } from './practice-steps';
import { setsWords } from '#core/words/sets';

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
    { id: 'add', label: setsWords('addItem'), keys: ['a'], kind: 'undoable', run: addPlain },
    { id: 'add-drill', label: setsWords('addDrill'), keys: ['d'], kind: 'view', run: addDrill },
    {
      id: 'up',
      label: setsWords('moveOpenItem'),
      keys: ['Alt+ArrowUp'],
      kind: 'undoable',
      enabled: onItem,
      run: () => void (openId && document.run(moveItem(openId, -1))),
    },
    {
      id: 'down',
      label: setsWords('moveOpenItemDown'),
      keys: ['Alt+ArrowDown'],
      kind: 'undoable',
      enabled: onItem,
      run: () => void (openId && document.run(moveItem(openId, 1))),
    },
    {
      id: 'remove',
      label: setsWords('takeOpenItem'),
      keys: ['Delete'],
      kind: 'undoable',
      enabled: onItem,
      run: () => void (openId && remove(openId)),
    },
    { id: 'print', label: setsWords('practiceCardPdf'), keys: ['p'], kind: 'never', run: print },
    { id: 'deck', label: setsWords('deck'), keys: ['l'], kind: 'view', run: toDeck },
    { id: 'list', label: setsWords('allPractices'), keys: ['Escape'], kind: 'view', run: toList },
    ...undoCommands(document),
  ];
}
