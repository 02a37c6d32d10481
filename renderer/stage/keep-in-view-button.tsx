import { useStore } from 'zustand';
import { keepInViewWords } from '#core/words/keep-in-view';
import { keepInViewStore, pressKeepInView } from '../open-swim/keep-in-view';
import type { OpenSwim } from '../open-swim/open-swim';
import { useTip } from '../ui/use-tip';

interface Props {
  /** The swims on the screen. */
  readonly swims: readonly OpenSwim[];
  /** Whether the coach zoomed or moved a picture by hand. */
  readonly taken: boolean;
}

/** Keeps the swimmer in view; goes back to the swimmer where the coach zoomed meanwhile. */
export function KeepInViewButton({ swims, taken }: Props) {
  const tip = useTip();
  const keep = useStore(keepInViewStore, (state) => state.keep);
  const back = keep && taken;
  const words = keepInViewWords(back ? 'back' : 'button');
  return (
    <button
      type="button"
      className="keep-in-view"
      aria-pressed={keep}
      aria-label={words}
      onClick={() => pressKeepInView(swims)}
      title={tip('keep-in-view', keepInViewWords(back ? 'backTip' : 'tip'))}
    >
      <svg width="20" height="16" viewBox="-10 -8 20 16" aria-hidden="true">
        <path
          d="M-9,-3 V-7 H-4 M4,-7 H9 V-3 M9,3 V7 H4 M-4,7 H-9 V3"
          fill="none"
          stroke="currentColor"
          strokeWidth="1.8"
        />
        <path d="M-6,2 Q-2,-3 1,0 T5.5,-1" fill="none" stroke="currentColor" strokeWidth="1.8" />
        {back && <circle r="1.6" fill="currentColor" cx="0" cy="4.6" />}
      </svg>
      <span className="keep-in-view-words">{words}</span>
    </button>
  );
}
