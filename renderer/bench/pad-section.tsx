import { type ReactNode, useState } from 'react';

interface Props {
  /** For screen readers, when the heading alone says too little. */
  readonly label: string;
  readonly words: string;
  /** Open until the coach says otherwise: what this drill is marked with, and what isn't done yet. */
  readonly open: boolean;
  /** A tick or a count beside the heading while it is folded. */
  readonly done: string;
  readonly children: ReactNode;
}

/** Pads that belong together, folded away when they are done or of no use here. Their keys go on working. */
export function PadSection({ label, words, open, done, children }: Props) {
  const [chosen, setChosen] = useState<boolean | null>(null);
  const shown = chosen ?? open;
  return (
    <section aria-label={label}>
      <h2>
        <button type="button" className="pad-fold" aria-expanded={shown} onClick={() => setChosen(!shown)}>
          <span aria-hidden="true">{shown ? '▾' : '▸'}</span>
          {words}
          {!shown && done !== '' && <span className="pad-count">{done}</span>}
        </button>
      </h2>
      {shown && children}
    </section>
  );
}
