import { useEffect, useRef, useState } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { HostError } from '#core/host-contract/host-error';
import type { Squad } from '#core/swim-file/squad-schema';
import type { SwimCard } from '#core/swim-file/swim-schema';
import { SwimCardForm } from '../card/swim-card-form';
import type { HostClient } from '../host/host-client';
import type { ClipFacts } from '../video/frame-source';
import { readClipFacts } from '../video/read-clip-facts';
import { addSwim } from './add-swim';
import { SlowMotionQuestion } from './slow-motion-question';

interface Props {
  readonly file: File;
  readonly waiting: number;
  readonly host: HostClient;
  readonly squad: Squad;
  readonly squadRevision: string | null;
  /** The new swim's id, or null when nothing was added. */
  readonly onClose: (swimId: string | null) => void;
}

const dayOf = (time: number): string => {
  const date = new Date(time);
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
};

const emptyCard = (file: File): SwimCard => ({
  swimmerId: null,
  swimmerName: '',
  date: dayOf(file.lastModified),
  stroke: 'butterfly',
  drill: '',
  arms: 'stroking',
  sideUp: 'front',
  aids: [],
  effort: null,
  distanceMetres: null,
  view: 'side',
  note: '',
  invented: false,
});

/** Reads a picked clip's facts, asks what only the coach knows, and adds it; or says in words why it can't be added. */
export function AddSwimDialog({ file, waiting, host, squad, squadRevision, onClose }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [facts, setFacts] = useState<ClipFacts | null>(null);
  const [trouble, setTrouble] = useState<HostError | null>(null);
  const [card, setCard] = useState(() => emptyCard(file));
  const [answered, setAnswered] = useState<number | null>(null);
  const [sending, setSending] = useState<{ share: number; stop: AbortController } | null>(null);

  useEffect(() => {
    dialog.current?.showModal();
    const leaving = new AbortController();
    void readClipFacts({ blob: file, name: file.name }, leaving.signal).then((read) => {
      if (leaving.signal.aborted) return;
      if (!read.ok) setTrouble(read.error);
      else if (!read.value.decodable)
        setTrouble({ code: 'unsupported-codec', detail: { name: file.name, codec: read.value.codec } });
      else setFacts(read.value);
    });
    return () => leaving.abort();
  }, [file]);

  const factor = answered ?? facts?.taggedSlowdown ?? 1;
  const add = async (): Promise<void> => {
    if (!facts) return;
    const stop = new AbortController();
    setSending({ share: 0, stop });
    const source = answered !== null ? 'coach' : facts.taggedSlowdown !== null ? 'file-tag' : 'assumed';
    const added = await addSwim(host, {
      file,
      facts,
      card,
      slowdown: { factor, source },
      squad,
      squadRevision,
      signal: stop.signal,
      onProgress: (share) => setSending({ share, stop }),
    });
    setSending(null);
    if (added.ok) onClose(added.value);
    else if (added.error.code !== 'cancelled') setTrouble(added.error);
  };

  return (
    <dialog
      ref={dialog}
      className="add-dialog"
      aria-labelledby="add-title"
      onCancel={(event) => {
        event.preventDefault();
        sending?.stop.abort();
        onClose(null);
      }}
    >
      <h1 id="add-title">Add {file.name}</h1>
      {waiting > 0 && <p>{waiting} more after this one.</p>}
      {trouble && (
        <div role="alert" className="add-trouble">
          <strong>{errorWords(trouble).what}</strong> {errorWords(trouble).todo}
        </div>
      )}
      {!facts && !trouble && <p role="status">Reading the clip…</p>}
      {facts && (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void add();
          }}
        >
          <p className="facts">
            {facts.width} × {facts.height} · {facts.table.starts.length} frames ·{' '}
            {facts.evenRate
              ? `${Number(facts.rate.toFixed(2))} a second`
              : `about ${Number(facts.rate.toFixed(1))} a second, variable`}{' '}
            · {facts.codec} in {facts.container}
            {facts.rotation !== 0 && ` · turned ${facts.rotation}°`}
          </p>
          <SlowMotionQuestion facts={facts} factor={factor} onChange={setAnswered} />
          <SwimCardForm card={card} squad={squad} onChange={setCard} />
          {sending && (
            <p role="status">
              <progress value={sending.share} /> {Math.round(sending.share * 100)} %
            </p>
          )}
          <footer>
            <button type="submit" className="primary" disabled={sending !== null}>
              Add to the shelf
            </button>
            <button
              type="button"
              onClick={() => {
                if (sending) sending.stop.abort();
                else onClose(null);
              }}
            >
              {sending ? 'Stop' : 'Don’t add'}
            </button>
          </footer>
        </form>
      )}
      {trouble && !facts && (
        <footer>
          <button type="button" onClick={() => onClose(null)}>
            Close
          </button>
        </footer>
      )}
    </dialog>
  );
}
