import { useState } from 'react';
import { useStore } from 'zustand';
import { errorWords } from '#core/host-contract/error-words';
import type { HostError } from '#core/host-contract/host-error';
import { Dialog } from '../ui/dialog';
import { SlowMotionQuestion } from '../card/slow-motion-question';
import { SwimCardForm } from '../card/swim-card-form';
import { enrolSwimmer } from '../card/write-swimmer';
import { isStill } from '../video/is-still';
import { keepCard } from '../open-swim/card-commands';
import { makeId } from '../host/make-id';
import { usualRate } from '#core/timeline/picture-order';
import { kickHz } from '../readings/slowdown-notice';
import { clockOf, useOpenSwim } from '../open-swim/open-swim';
import '../card/card.css';
import { benchWords } from '#core/words/bench';

/** What is known of the swim beside its marks, to be mended on the bench: the card, and the slow motion. */
export function CardDialog({ onClose }: { readonly onClose: () => void }) {
  const session = useOpenSwim();
  const squad = useStore(session.squad, (state) => state.squad);
  const [card, setCard] = useState(() => session.document.swim().card);
  const [answered, setAnswered] = useState<number | null>(null);
  const [trouble, setTrouble] = useState<HostError | null>(null);
  const told = session.document.swim().clip.slowdown;
  const hz = useStore(session.readings.store, kickHz);
  // from the swim itself: it is asked also while there is no picture
  const facts = {
    rate: usualRate(clockOf(session.document.swim()).table),
    taggedSlowdown: told.source === 'file-tag' ? told.factor : null,
  };
  const factor = answered ?? (told.source === 'assumed' ? null : told.factor);

  const keep = async (): Promise<void> => {
    const enrolled = await enrolSwimmer(session.host, card.swimmerName, makeId);
    if (!enrolled.ok) {
      setTrouble(enrolled.error);
      return;
    }
    const swimmer = enrolled.value;
    session.squad.setState(({ squad: known }) =>
      known && swimmer && !known.swimmers.some((each) => each.id === swimmer.id)
        ? { squad: { ...known, swimmers: [...known.swimmers, swimmer] } }
        : {},
    );
    session.document.run(
      keepCard({ ...card, swimmerName: swimmer?.name ?? '', swimmerId: swimmer?.id ?? null }, answered),
    );
    onClose();
  };

  return (
    <Dialog title={benchWords('swimCard')} wide onCancel={onClose}>
      {trouble && (
        <p className="message message-trouble" role="alert">
          {errorWords(trouble).what} {errorWords(trouble).todo}
        </p>
      )}
      <form
        className="card-dialog-form"
        onSubmit={(event) => {
          event.preventDefault();
          void keep();
        }}
      >
        {!isStill(clockOf(session.document.swim())) && (
          <SlowMotionQuestion
            facts={facts}
            factor={factor}
            filmHz={hz === null ? null : hz / told.factor}
            onChange={setAnswered}
          />
        )}
        {squad ? (
          <SwimCardForm card={card} squad={squad} onChange={setCard} />
        ) : (
          <p>{benchWords('squadCantRead')}</p>
        )}
        <footer className="dialog-foot">
          <button type="submit" className="primary" disabled={!squad}>
            {benchWords('keep')}
          </button>
          <button type="button" onClick={onClose}>
            {benchWords('leave')}
          </button>
        </footer>
      </form>
    </Dialog>
  );
}
