import { useStore } from 'zustand';
import type { StoreApi } from 'zustand/vanilla';
import type { Command } from './command';
import { useTip } from './use-tip';

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
        title={undoName ? tip('undo', `Undo: ${undoName}`) : 'Nothing to undo'}
      >
        Undo
      </button>
      <button
        type="button"
        onClick={() => document.redo()}
        disabled={redoName === null}
        title={redoName ? tip('redo', `Redo: ${redoName}`) : 'Nothing to redo'}
      >
        Redo
      </button>
    </>
  );
}

/** The same with keys. */
export function undoCommands(document: Undoable): readonly Command[] {
  return [
    {
      id: 'undo',
      label: 'Undo',
      keys: ['$mod+z'],
      kind: 'view',
      enabled: () => document.store.getState().undoName !== null,
      run: () => void document.undo(),
    },
    {
      id: 'redo',
      label: 'Redo',
      keys: ['$mod+Shift+z', '$mod+y'],
      kind: 'view',
      enabled: () => document.store.getState().redoName !== null,
      run: () => void document.redo(),
    },
  ];
}
