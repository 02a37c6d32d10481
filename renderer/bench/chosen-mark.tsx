import { CommandButton } from '../ui/command-button';
import { keyCap } from '../ui/key-cap';
import { staffOf } from '#core/marks/event-kind';
import { markPhrase } from '#core/marks/mark-words';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { canSayMore } from '../open-swim/marking';
import { goTo } from '../open-swim/stepping';
import { useKeyOf } from '../ui/use-tip';
import { benchWords } from '#core/words/bench';
import { rich } from '../ui/rich';

/** The mark that is chosen, by name, with what can be done to it; its keys beside each. */
export function ChosenMark() {
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
      <CommandButton command="event-earlier" tip={benchWords('oneFrameEarlier')}>
        ◀ <kbd>{keyOf('event-earlier')}</kbd>
      </CommandButton>
      <CommandButton command="event-later" tip={benchWords('oneFrameLater')}>
        ▶ <kbd>{keyOf('event-later')}</kbd>
      </CommandButton>
      {canSayMore(mark.kind) && (
        <CommandButton command="say-more" tip={benchWords('changeWhatSaid')}>
          {rich(benchWords.parts('sayMoreK', { key: keyOf('say-more'), kbd: keyCap }))}
        </CommandButton>
      )}
      <CommandButton command="remove" tip={benchWords('remove')}>
        {benchWords('remove2')}
      </CommandButton>
    </section>
  );
}
