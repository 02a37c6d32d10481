import { useStore } from 'zustand';
import { shortListKey, withUsual } from '#core/measures/short-list';
import type { Swimmer } from '#core/swim-file/squad-schema';
import { useSwim } from '../open-swim/open-swim';
import type { ReadingRowData } from './arrange-readings';
import { changeShortLists, shortListStore } from './kept-short-lists';
import { useShortList } from './use-short-list';
import { ReadingRow } from './reading-row';
import { readingsWords } from '#core/words/readings';

interface Props {
  readonly rows: ReadonlyMap<string, ReadingRowData>;
  readonly swimmer: Swimmer | null;
}

/** The few readings this drill is about, large, as the coach pinned and ordered them. */
export function ShortList({ rows, swimmer }: Props) {
  const card = useSwim((swim) => swim.card);
  const list = useShortList();
  const kept = useStore(shortListStore, ({ lists }) => lists);
  const own = kept[shortListKey(card)] !== undefined;
  return (
    <section className="short-list" aria-label={readingsWords('shortList')}>
      <ul>
        {list.flatMap((id) => {
          const row = rows.get(id);
          return row ? [<ReadingRow key={id} {...row} swimmer={swimmer} large />] : [];
        })}
      </ul>
      {own && (
        <p className="short-list-own">
          {readingsWords('ownList')}{' '}
          <button type="button" onClick={() => changeShortLists((lists) => withUsual(lists, card))}>
            {readingsWords('usualList')}
          </button>
        </p>
      )}
    </section>
  );
}
