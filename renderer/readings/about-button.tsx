import { readingsWords } from '#core/words/readings';

interface Props {
  readonly label: string;
  readonly open: boolean;
  readonly onOpen: (open: boolean) => void;
}

/** Opens and closes what a reading is and where it is from. */
export function AboutButton({ label, open, onOpen }: Props) {
  return (
    <button
      type="button"
      className="about"
      aria-expanded={open}
      aria-label={readingsWords('about', { label })}
      title={readingsWords('whatWhereFrom')}
      onClick={() => onOpen(!open)}
    >
      ?
    </button>
  );
}
