import { useStore } from 'zustand';
import type { StoreApi } from 'zustand/vanilla';
import type { Command } from './command';
import { useTip } from './use-tip';
import { uiWords } from '#core/words/ui';

interface Undoable {
  readonly store: StoreApi<{ readonly undoName: string | null; readonly redoName: string | null }>;
  undo(): unknown;
  redo(): unknown;
}

/** Takes the last step back, or again. */
export function UndoButtons({ document }: { readonly document: Undoable }) {
  const tip = useTip();
  const undoName = useStore(document.store, (state) => state.undoName);
  const redoName = useStore(document.store, (state) => state.redoName);
  return (
    <>
      <button
        type="button"
        onClick={() => document.undo()}
        disabled={undoName === null}
        title={undoName ? tip('undo', uiWords('undo', { undoName })) : uiWords('nothingUndo')}
      >
        {uiWords('undo2')}
      </button>
      <button
        type="button"
        onClick={() => document.redo()}
        disabled={redoName === null}
        title={redoName ? tip('redo', uiWords('redo', { redoName })) : uiWords('nothingRedo')}
      >
        {uiWords('redo2')}
      </button>
    </>
  );
}

/** The same with keys. */
export function undoCommands(document: Undoable): readonly Command[] {
  return [
    {
      id: 'undo',
      label: uiWords('undo2'),
      keys: ['$mod+z'],
      kind: 'view',
      enabled: () => document.store.getState().undoName !== null,
      run: () => void document.undo(),
    },
    {
      id: 'redo',
      label: uiWords('redo2'),
      keys: ['$mod+Shift+z', '$mod+y'],
      kind: 'view',
      enabled: () => document.store.getState().redoName !== null,
      run: () => void document.redo(),
    },
  ];
}
