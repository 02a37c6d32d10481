import { useStore } from 'zustand';
import { useOpenSwim, useSwim } from '../open-swim/open-swim';
import { questionsOf } from '../open-swim/follow-selectors';
import { proposalsOf } from '../open-swim/proposals';
import { useKeyOf, useTip } from '../ui/use-tip';
import { followWords } from '#core/words/follow';

/** Opens following and proposals; its count is what waits for the coach. */
export function FollowPad() {
  const tip = useTip();
  const keyOf = useKeyOf();
  const session = useOpenSwim();
  const open = useStore(session.follow, (state) => state.open);
  const waiting = useSwim((swim) => questionsOf(swim).length + proposalsOf(swim).length);
  return (
    <button
      type="button"
      className="pad"
      aria-pressed={open}
      onClick={() => session.follow.setState({ open: !open })}
      title={tip('follow-panel', followWords('followPointsBetweenBody'))}
      aria-label={followWords('followProposeWaiting', { waiting })}
    >
      <svg width="20" height="20" viewBox="-11 -11 22 22" aria-hidden="true">
        <path
          d="M-9,5 C-4,-9 3,9 9,-4"
          fill="none"
          stroke="currentColor"
          strokeWidth="2"
          strokeDasharray="3 2.5"
        />
        <circle cx="-8" cy="4" r="2.6" fill="currentColor" />
        <circle cx="8" cy="-3" r="2.6" fill="none" stroke="currentColor" strokeWidth="1.8" />
      </svg>
      <span className="pad-words">{followWords('follow')}</span>
      <span className="pad-count">{waiting > 0 ? waiting : ''}</span>
      <kbd>{keyOf('follow-panel')}</kbd>
    </button>
  );
}
