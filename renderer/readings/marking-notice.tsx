import { keyCap } from '../ui/key-cap';
import { useStore } from 'zustand';
import { useOpenSwim } from '../open-swim/open-swim';
import { useKeyOf, useTip } from '../ui/use-tip';
import { readingsWords } from '#core/words/readings';
import { rich } from '../ui/rich';

/** What the intervals rest on, and the way to measure it. */
export function MarkingNotice({ onRemark }: { readonly onRemark: () => void }) {
  const tip = useTip();
  const keyOf = useKeyOf();
  const session = useOpenSwim();
  const error = useStore(session.known, (state) => state.markingError);
  const parts = error?.measured;
  const measured = parts ? parts.events.length + parts.landmarks.length + parts.followed.length : 0;
  return (
    <footer className="readings-foot">
      <p>
        {readingsWords('n95IntervalGaps', {
          measured:
            measured === 0 ? readingsWords('itsMarkingError') : readingsWords('yourOwnMarking', { measured }),
        })}
      </p>
      <button type="button" onClick={onRemark} title={tip('mark-again', readingsWords('markRandomChoice'))}>
        {rich(
          readingsWords.parts('m', {
            key: keyOf('mark-again'),
            value: measured === 0 ? readingsWords('measureMyMarking') : readingsWords('markAgain'),
            kbd: keyCap,
          }),
        )}
      </button>
    </footer>
  );
}
