import { useTip } from '../ui/use-tip';

interface Props {
  readonly count: number;
  readonly shown: number;
  readonly onChange: () => void;
  readonly onRemove: () => void;
  readonly onAll: () => void;
  readonly onNone: () => void;
}

/** What can be done with the swims chosen; there while any is. */
export function ChooseBar({ count, shown, onChange, onRemove, onAll, onNone }: Props) {
  const tip = useTip();
  if (count === 0) return null;
  return (
    <section className="choose-bar" aria-label="Chosen swims">
      <output>{count === 1 ? '1 swim chosen' : `${count} swims chosen`}</output>
      <button
        type="button"
        className="primary"
        onClick={onChange}
        title={tip('change-cards', 'Swimmer, date, drill, aids')}
      >
        Change their cards…
      </button>
      <button type="button" onClick={onRemove} title={tip('remove', 'Can be undone')}>
        Move to the bin
      </button>
      <button type="button" onClick={onAll} disabled={count === shown}>
        Choose all {shown} shown
      </button>
      <button type="button" className="quiet" onClick={onNone} title={tip('choose-none', 'Choose none')}>
        Choose none
      </button>
    </section>
  );
}
