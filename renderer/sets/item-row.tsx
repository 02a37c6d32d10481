import type { ReactNode } from 'react';
import type { Drill } from '#core/practice/drill-schema';
import { itemCautions } from '#core/practice/item-cautions';
import { itemPhrase } from '#core/practice/item-phrase';
import type { PracticeItem } from '#core/practice/practice-schema';
import { useTip } from '../ui/use-tip';

interface Props {
  readonly item: PracticeItem;
  readonly place: number;
  readonly last: boolean;
  readonly drill: Drill | null;
  readonly open: boolean;
  readonly onOpen: () => void;
  readonly onMove: (by: -1 | 1) => void;
  readonly onCopy: () => void;
  readonly onRemove: () => void;
  /** The form, shown while the item is open. */
  readonly children: ReactNode;
}

/** One item as it stands on the card; pressed, it opens for changing. */
export function ItemRow({
  item,
  place,
  last,
  drill,
  open,
  onOpen,
  onMove,
  onCopy,
  onRemove,
  children,
}: Props) {
  const tip = useTip();
  const phrase = itemPhrase(item, drill);
  const { cautions } = itemCautions(item, drill);
  return (
    <li className={open ? 'plan-item open' : 'plan-item'}>
      <div className="plan-item-head">
        <button type="button" className="plan-item-phrase" aria-expanded={open} onClick={onOpen}>
          <span aria-hidden="true">{place + 1}</span>
          <span>
            {phrase}
            {item.note && <small>{item.note}</small>}
            {cautions.length > 0 && !open && <small>⚠ {cautions.length} cautions</small>}
          </span>
        </button>
        <button type="button" disabled={place === 0} onClick={() => onMove(-1)} title={tip('up', 'Move up')}>
          ↑<span className="unseen">Move item {place + 1} up</span>
        </button>
        <button type="button" disabled={last} onClick={() => onMove(1)} title={tip('down', 'Move down')}>
          ↓<span className="unseen">Move item {place + 1} down</span>
        </button>
        <button type="button" onClick={onCopy} title="The same once more">
          Copy<span className="unseen"> item {place + 1}</span>
        </button>
        <button type="button" className="quiet" onClick={onRemove} title={tip('remove', 'Take off the card')}>
          ✕<span className="unseen">Take item {place + 1} off the card</span>
        </button>
      </div>
      {open && children}
    </li>
  );
}
