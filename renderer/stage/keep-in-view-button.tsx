import { useStore } from 'zustand';
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
  return (
    <button
      type="button"
      className="keep-in-view"
      aria-pressed={keep}
      onClick={() => pressKeepInView(swims)}
      title={tip('keep-in-view', back ? 'Back to the swimmer' : 'Zoom and move the picture with the swimmer')}
    >
      {back ? 'Back to swimmer' : 'Keep in view'}
    </button>
  );
}
