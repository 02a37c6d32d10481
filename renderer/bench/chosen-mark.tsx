import { keyCap } from '../ui/key-cap';
import { staffOf } from '#core/marks/event-kind';
import { markPhrase } from '#core/marks/mark-words';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { askAgain, canSayMore } from '../open-swim/marking';
import { nudgeEvent, removeSelected } from '../open-swim/selection-actions';
import { goTo } from '../open-swim/stepping';
import { useKeyOf, useTip } from '../ui/use-tip';
import { benchWords } from '#core/words/bench';
import { rich } from '../ui/rich';

/** The mark that is chosen, by name, with what can be done to it; its keys beside each. */
export function ChosenMark() {
  const tip = useTip();
  const keyOf = useKeyOf();
  const session = useOpenSwim();
  const id = useView(({ selection }) => (selection.kind === 'event' ? selection.id : null));
  const mark = useSwim((swim) => (id === null ? null : (swim.events.find((each) => each.id === id) ?? null)));
  const busy = useView((state) => state.question !== null || state.tool !== 'point');
  if (!mark || busy) return null;
  return (
    <section className="chosen-mark" aria-label={benchWords('chosenMark')}>
      <button
        type="button"
        className="quiet"
        onClick={() => goTo(session, mark.frame)}
        title={benchWords('showItsFrame')}
      >
        <strong className={`chosen-mark-${staffOf(mark.kind)}`}>{markPhrase(mark)}</strong>
        <small>{benchWords('frame', { frame: mark.frame + 1 })}</small>
      </button>
      <button
        type="button"
        onClick={() => nudgeEvent(session, -1)}
        title={tip('event-earlier', benchWords('oneFrameEarlier'))}
      >
        ◀ <kbd>{keyOf('event-earlier')}</kbd>
      </button>
      <button
        type="button"
        onClick={() => nudgeEvent(session, 1)}
        title={tip('event-later', benchWords('oneFrameLater'))}
      >
        ▶ <kbd>{keyOf('event-later')}</kbd>
      </button>
      {canSayMore(mark.kind) && (
        <button
          type="button"
          onClick={() => askAgain(session)}
          title={tip('say-more', benchWords('changeWhatSaid'))}
        >
          {rich(benchWords.parts('sayMoreK', { key: keyOf('say-more'), kbd: keyCap }))}
        </button>
      )}
      <button
        type="button"
        onClick={() => removeSelected(session)}
        title={tip('remove', benchWords('remove'))}
      >
        {benchWords('remove2')}
      </button>
    </section>
  );
}
