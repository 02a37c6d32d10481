import { withMoved, withPinned } from '#core/measures/short-list';
import { useSwim } from '../open-swim/open-swim';
import { changeShortLists } from './kept-short-lists';
import { useShortList } from './use-short-list';
import { readingsWords } from '#core/words/readings';

/** Pins a reading to this drill's short list, moves it there, or takes it off. */
export function PinBar({ id, label }: { readonly id: string; readonly label: string }) {
  const card = useSwim((swim) => swim.card);
  const list = useShortList();
  const at = list.indexOf(id);
  const pinned = at >= 0;
  const move = (by: -1 | 1): void => changeShortLists((lists) => withMoved(lists, card, id, by));
  return (
    <div className="pin-bar">
      <button
        type="button"
        aria-pressed={pinned}
        aria-label={readingsWords('pinNamed', { label })}
        title={readingsWords(pinned ? 'takeOffList' : 'showFirst')}
        onClick={() => changeShortLists((lists) => withPinned(lists, card, id, !pinned))}
      >
        {readingsWords(pinned ? 'unpin' : 'pin')}
      </button>
      {pinned && (
        <>
          <button
            type="button"
            aria-label={readingsWords('moveUp', { label })}
            disabled={at === 0}
            onClick={() => move(-1)}
          >
            ↑
          </button>
          <button
            type="button"
            aria-label={readingsWords('moveDown', { label })}
            disabled={at === list.length - 1}
            onClick={() => move(1)}
          >
            ↓
          </button>
        </>
      )}
    </div>
  );
}
