import { useStore } from 'zustand';
import { useOpenSwim } from '../open-swim/open-swim';
import { useTip } from '../ui/use-tip';

/** What the intervals rest on, and the way to measure it. */
export function MarkingNotice({ onRemark }: { readonly onRemark: () => void }) {
  const tip = useTip();
  const session = useOpenSwim();
  const error = useStore(session.known, (state) => state.markingError);
  const parts = error?.measured;
  const measured = parts ? parts.events.length + parts.landmarks.length + parts.followed.length : 0;
  return (
    <footer className="readings-foot">
      <p>
        ± is a 95 % interval.{' '}
        {measured === 0
          ? 'Its marking error is assumed until your own is measured.'
          : `Your own marking error is measured for ${measured} ${measured === 1 ? 'kind' : 'kinds'} of mark; where it is not, it is assumed.`}{' '}
        Gaps are leg minus arm: plus means the leg is later.
      </p>
      <button
        type="button"
        onClick={onRemark}
        title={tip('mark-again', 'Mark a random choice again without seeing the first marks')}
      >
        {measured === 0 ? 'Measure my marking error' : 'Mark again'} <kbd>⇧ M</kbd>
      </button>
    </footer>
  );
}
