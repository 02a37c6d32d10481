import { useEffect, useMemo, useState } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { HostError } from '#core/host-contract/host-error';
import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import type { Squad } from '#core/swim-file/squad-schema';
import { windowMemory } from '../host/window-memory';
import { ConfirmDialog } from '../ui/confirm-dialog';
import { Dialog } from '../ui/dialog';
import { cardWords } from '#core/swim-file/card-words';
import { firstCard, isoDayOf, rememberCard } from '../card/remembered-card';
import { SwimCardForm } from '../card/swim-card-form';
import type { HostClient } from '../host/host-client';
import { addSwim } from './add-swim';
import { ClipFactsList } from './clip-facts-list';
import { bytesOf, type ClipToAdd, madeAt, nameOf } from './clip-to-add';
import { isStill } from '../video/is-still';
import { SlowMotionQuestion } from '../card/slow-motion-question';
import { FilmNotes } from './film-notes';
import { twinsOfClip } from './twins-of-clip';
import { useLookAtClip } from './use-look-at-clip';
import { shelfWords } from '#core/words/shelf';

interface Props {
  readonly adding: ClipToAdd;
  /** How many clips wait behind this one. */
  readonly waiting: number;
  readonly host: HostClient;
  readonly squad: Squad;
  /** What is on the shelf, to tell a clip that is there already. */
  readonly swims: readonly SwimSummary[];
  /** The new swim's id, or null when this clip was left out. */
  readonly onDone: (swimId: string | null) => void;
}

interface Sending {
  readonly share: number;
  readonly stop: AbortController;
}

/** Shows what a clip is, asks what only the coach knows, and adds it; or says in words why it can't be added. */
export function AddSwimDialog({ adding, waiting, host, squad, swims, onDone }: Props) {
  const [track, setTrack] = useState<number | null>(null);
  const look = useLookAtClip(adding, track, host);
  const { facts, picture, thumbnail, trouble: unreadable } = look;
  const first = useMemo(
    () =>
      firstCard(windowMemory, isoDayOf(madeAt(adding) ?? Date.now()), (id) =>
        squad.swimmers.some((each) => each.id === id),
      ),
    [adding, squad],
  );
  const [card, setCard] = useState(first);
  const [answered, setAnswered] = useState<number | null>(null);
  const [copied, setCopied] = useState(adding.kind === 'referred' && adding.copied);
  const [sending, setSending] = useState<Sending | null>(null);
  const [failed, setFailed] = useState<HostError | null>(null);
  const [asks, setAsks] = useState(false);

  const [twins, setTwins] = useState<readonly SwimSummary[]>([]);
  useEffect(() => {
    let gone = false;
    void twinsOfClip(adding, swims).then(
      (found) => !gone && setTwins(found),
      // a file that can't be read is told by the look at it
      () => !gone && setTwins([]),
    );
    return () => {
      gone = true;
    };
  }, [adding, swims]);

  // leaving the screen in the middle of sending takes back what was sent
  useEffect(() => () => sending?.stop.abort(), [sending?.stop]);

  const still = facts !== null && isStill(facts);
  const factor = still ? 1 : (answered ?? facts?.taggedSlowdown ?? null);
  const leave = (): void => {
    if (sending) sending.stop.abort();
    else if (card !== first) setAsks(true);
    else onDone(null);
  };
  const add = async (): Promise<void> => {
    if (!facts || factor === null) return;
    const stop = new AbortController();
    look.endCheck();
    setFailed(null);
    setSending({ share: 0, stop });
    const added = await addSwim(host, {
      adding: adding.kind === 'referred' ? { ...adding, copied } : look.toAdd,
      facts,
      card,
      slowdown: { factor, source: answered === null && !still ? 'file-tag' : 'coach' },
      thumbnail,
      signal: stop.signal,
      onProgress: (share) => setSending({ share, stop }),
    });
    setSending(null);
    if (added.ok) {
      look.taken();
      rememberCard(windowMemory, added.value.card);
      onDone(added.value.id);
    } else if (added.error.code !== 'cancelled') setFailed(added.error);
  };

  const trouble = unreadable ?? failed;
  return (
    <Dialog title={shelfWords('add', { nameOf: nameOf(adding) })} wide onCancel={leave}>
      {twins[0] && (
        <p className="message" role="status">
          <strong>{shelfWords('veryClipShelf')}</strong> {cardWords(twins[0].card).title},{' '}
          {cardWords(twins[0].card).facts[0]}
          {twins.length > 1
            ? shelfWords('moreAddingAgain', { twins: twins.length - 1 })
            : shelfWords('addingAgainMakes')}
        </p>
      )}
      {waiting > 0 && <p className="caution">{shelfWords('moreAfterOne', { waiting })}</p>}
      {trouble && (
        <p className="message message-trouble" role="alert">
          <strong>{errorWords(trouble).what}</strong> {errorWords(trouble).todo}
        </p>
      )}
      {!facts && !unreadable && <output>{look.words || shelfWords('readingClip')}</output>}
      {unreadable && (
        <footer className="dialog-foot">
          <button type="button" className="primary" onClick={() => onDone(null)}>
            {waiting > 0 ? shelfWords('goNext') : shelfWords('close')}
          </button>
        </footer>
      )}
      {facts && (
        <form
          className="card-dialog-form"
          onSubmit={(event) => {
            event.preventDefault();
            void add();
          }}
        >
          <ClipFactsList
            facts={facts}
            bytes={bytesOf(adding)}
            slowdown={factor}
            picture={picture}
            check={look.check}
          />
          <FilmNotes facts={facts} onTrack={setTrack} />
          {adding.kind === 'referred' && (
            <>
              <label className="tick">
                <input
                  type="checkbox"
                  checked={copied}
                  disabled={sending !== null}
                  onChange={(event) => setCopied(event.target.checked)}
                />{' '}
                {shelfWords('copyIntoLibrary')}
              </label>
              {!copied && <p className="caution">{shelfWords('fileStaysWhere')}</p>}
            </>
          )}
          {!still && <SlowMotionQuestion facts={facts} factor={factor} onChange={setAnswered} />}
          <SwimCardForm card={card} squad={squad} onChange={setCard} />
          <AddingFoot sending={sending} onLeave={leave} />
        </form>
      )}
      {asks && (
        <ConfirmDialog
          title={shelfWords('leaveClipOut')}
          words={shelfWords('whatYouFilled')}
          yes={shelfWords('leaveOut')}
          no={shelfWords('go')}
          onAnswer={(yes) => {
            setAsks(false);
            if (yes) onDone(null);
          }}
        />
      )}
    </Dialog>
  );
}

function AddingFoot({
  sending,
  onLeave,
}: {
  readonly sending: Sending | null;
  readonly onLeave: () => void;
}) {
  return (
    <footer className="dialog-foot">
      <button type="submit" className="primary" disabled={sending !== null}>
        {shelfWords('addShelf')}
      </button>
      <button type="button" onClick={onLeave}>
        {sending ? shelfWords('stop') : shelfWords('dontAdd')}
      </button>
      {sending && (
        <output className="sending">
          <progress value={sending.share} aria-label={shelfWords('sent')} /> {Math.round(sending.share * 100)}{' '}
          %
        </output>
      )}
    </footer>
  );
}
