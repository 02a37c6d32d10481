import { Dialog } from './dialog';

interface Props {
  readonly title: string;
  readonly words: string;
  readonly yes: string;
  readonly no: string;
  readonly onAnswer: (yes: boolean) => void;
}

/** Asks before something is lost. The safe answer has the focus, and Esc gives it. */
export function ConfirmDialog({ title, words, yes, no, onAnswer }: Props) {
  return (
    <Dialog title={title} onCancel={() => onAnswer(false)}>
      <p>{words}</p>
      <footer className="dialog-foot">
        <button type="button" className="primary" onClick={() => onAnswer(false)}>
          {no}
        </button>
        <button type="button" className="danger" onClick={() => onAnswer(true)}>
          {yes}
        </button>
      </footer>
    </Dialog>
  );
}
