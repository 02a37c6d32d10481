import { useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { SwimCardForm } from '../card/swim-card-form';
import { SlowMotionQuestion } from '../shelf/slow-motion-question';
import { editCard, setSlowdown } from '../state/card-commands';
import { useBench } from './bench-session';
import '../card/card.css';

/** What is known of the swim beside its marks, to be mended on the bench: the card, and the slow motion. */
export function CardDialog({ onClose }: { readonly onClose: () => void }) {
  const session = useBench();
  const dialog = useRef<HTMLDialogElement>(null);
  const squad = useStore(session.squad, (state) => state.squad);
  const facts = useStore(session.film, (state) => state.source?.facts ?? null);
  const [card, setCard] = useState(() => session.document.swim().card);
  const [factor, setFactor] = useState<number | null>(null);
  const told = session.document.swim().clip.slowdown;
  useEffect(() => {
    dialog.current?.showModal();
  }, []);
  const keep = (): void => {
    session.document.run(editCard({ ...card, swimmerName: card.swimmerName.trim() }));
    if (factor !== null) session.document.run(setSlowdown(factor));
    dialog.current?.close();
  };
  return (
    <dialog ref={dialog} className="dialog dialog-wide" aria-labelledby="card-title" onClose={onClose}>
      <h1 id="card-title">Swim card</h1>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          keep();
        }}
      >
        {facts && <SlowMotionQuestion facts={facts} factor={factor ?? told.factor} onChange={setFactor} />}
        {squad ? (
          <SwimCardForm card={card} squad={squad} onChange={setCard} />
        ) : (
          <p>The squad can’t be read just now, so the card can’t be changed.</p>
        )}
        <footer className="dialog-foot">
          <button type="submit" className="primary" disabled={!squad}>
            Keep
          </button>
          <button type="button" onClick={() => dialog.current?.close()}>
            Leave as it was
          </button>
        </footer>
      </form>
    </dialog>
  );
}
