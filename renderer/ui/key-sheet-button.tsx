import { createStore } from 'zustand/vanilla';
import { useTip } from './use-tip';
import { uiWords } from '#core/words/ui';

/** Whether the keyboard sheet is open; any screen's button and the ? key open it. */
export const keySheet = createStore<{ readonly open: boolean }>(() => ({ open: false }));

export function KeySheetButton() {
  const tip = useTip();
  return (
    <button
      type="button"
      className="key-sheet-button"
      title={tip('keys', uiWords('keysLook'))}
      aria-label={uiWords('keysLook')}
      onClick={() => keySheet.setState({ open: true })}
    >
      ?
    </button>
  );
}
