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
  if (count === 0) return null;
  return (
    <section className="choose-bar" aria-label="Chosen swims">
      <output>{count === 1 ? '1 swim chosen' : `${count} swims chosen`}</output>
      <button type="button" className="primary" onClick={onChange} title="Swimmer, date, drill, aids (E)">
        Change their cards…
      </button>
      <button type="button" onClick={onRemove} title="Can be undone (Delete)">
        Move to the bin
      </button>
      <button type="button" onClick={onAll} disabled={count === shown}>
        Choose all {shown} shown
      </button>
      <button type="button" className="quiet" onClick={onNone} title="Choose none (Escape)">
        Choose none
      </button>
    </section>
  );
}
