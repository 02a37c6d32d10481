import type { ReactNode } from 'react';
import type { Drill } from '#core/practice/drill-schema';
import { itemCautions } from '#core/practice/item-cautions';
import { itemPhrase } from '#core/practice/item-phrase';
import type { PracticeItem } from '#core/practice/practice-schema';
import { useTip } from '../ui/use-tip';
import { setsWords } from '#core/words/sets';
import { rich } from '../ui/rich';

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
            {cautions.length > 0 && !open && (
              <small>{setsWords('cautionsCautions', { cautions: cautions.length })}</small>
            )}
          </span>
        </button>
        <button
          type="button"
          disabled={place === 0}
          onClick={() => onMove(-1)}
          title={tip('up', setsWords('moveUp'))}
        >
          ↑<span className="unseen">{setsWords('moveItemUp', { place: place + 1 })}</span>
        </button>
        <button
          type="button"
          disabled={last}
          onClick={() => onMove(1)}
          title={tip('down', setsWords('moveDown'))}
        >
          ↓<span className="unseen">{setsWords('moveItemDown', { place: place + 1 })}</span>
        </button>
        <button type="button" onClick={onCopy} title={setsWords('sameOnceMore')}>
          {rich(
            setsWords.parts('copyItem', {
              place: place + 1,
              span: (inside) => <span className="unseen">{inside}</span>,
            }),
          )}
        </button>
        <button
          type="button"
          className="quiet"
          onClick={onRemove}
          title={tip('remove', setsWords('takeOffCard'))}
        >
          ✕<span className="unseen">{setsWords('takeItemOffCard', { place: place + 1 })}</span>
        </button>
      </div>
      {open && children}
    </li>
  );
}
