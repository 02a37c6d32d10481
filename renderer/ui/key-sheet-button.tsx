import { createStore } from 'zustand/vanilla';
import { useTip } from './use-tip';

/** Whether the keyboard sheet is open; any screen's button and the ? key open it. */
export const keySheet = createStore<{ readonly open: boolean }>(() => ({ open: false }));

export function KeySheetButton() {
  const tip = useTip();
  return (
    <button
      type="button"
      className="key-sheet-button"
      title={tip('keys', 'Keys and look')}
      aria-label="Keys and look"
      onClick={() => keySheet.setState({ open: true })}
    >
      ?
    </button>
  );
}
