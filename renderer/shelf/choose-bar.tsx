import { SeeQueueBar } from '../see/see-queue-bar';
import { useTip } from '../ui/use-tip';
import { shelfWords } from '#core/words/shelf';

interface Props {
  readonly count: number;
  readonly shown: number;
  readonly onChange: () => void;
  readonly onSee: () => void;
  readonly onRemove: () => void;
  readonly onAll: () => void;
  readonly onNone: () => void;
}

/** What can be done with the swims chosen; there while any is. */
export function ChooseBar({ count, shown, onChange, onSee, onRemove, onAll, onNone }: Props) {
  const tip = useTip();
  if (count === 0) return <SeeQueueBar />;
  return (
    <section className="choose-bar" aria-label={shelfWords('chosenSwims')}>
      <output>{shelfWords('swimsChosen', { count })}</output>
      <button
        type="button"
        className="primary"
        onClick={onChange}
        title={tip('change-cards', shelfWords('swimmerDateDrill'))}
      >
        {shelfWords('changeTheirCards')}
      </button>
      <button type="button" onClick={onSee} title={tip('see-chosen', shelfWords('seeChosenTip'))}>
        {shelfWords('seeChosen', { count })}
      </button>
      <button type="button" onClick={onRemove} title={tip('remove', shelfWords('canUndone'))}>
        {shelfWords('moveBin')}
      </button>
      <button type="button" onClick={onAll} disabled={count === shown}>
        {shelfWords('chooseAllShown', { shown })}
      </button>
      <button
        type="button"
        className="quiet"
        onClick={onNone}
        title={tip('choose-none', shelfWords('chooseNone'))}
      >
        {shelfWords('chooseNone')}
      </button>
    </section>
  );
}
