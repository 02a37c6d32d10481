import { useStore } from 'zustand';
import { useTip } from '../ui/use-tip';
import { useOpenSwim, useSwim } from '../open-swim/open-swim';
import { cancelSeeing, seeSwimmer } from './see-actions';
import { seeStoreOf } from '../open-swim/see-store';
import { seeWords } from '#core/words/see';

/** The first thing to do on a swim without marks; gone once there are seen points or body lines. */
export function SeePad() {
  const tip = useTip();
  const session = useOpenSwim();
  const running = useStore(seeStoreOf(session), (state) => state.running);
  const unmarked = useSwim((swim) => swim.postures.length + swim.seen.length === 0);
  if (!unmarked && !running) return null;
  return (
    <button
      type="button"
      className="pad pass"
      aria-pressed={running !== null}
      onClick={() => (running ? cancelSeeing(session) : void seeSwimmer(session))}
      title={
        running ? tip('see-cancel', seeWords('stopLookingSwimmer')) : tip('see', seeWords('layNinePoints'))
      }
    >
      <span className="pad-words">
        {running ? seeWords('seeing', { share: Math.round(100 * running.share) }) : seeWords('seeSwimmer')}
      </span>
      <kbd>{running ? seeWords('esc') : '⇧S'}</kbd>
    </button>
  );
}
