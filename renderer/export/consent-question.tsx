import './consent-question.css';
import { useState } from 'react';
import { type LeaveToShow, namesInWords } from '#core/consent/leave-to-show';
import { errorWords } from '#core/host-contract/error-words';
import { dayWords } from '#core/swim-file/card-words';
import { withKey } from '../ui/use-tip';
import { isoDayOf } from '../card/remembered-card';
import type { OpenSwim } from '../open-swim/open-swim';
import { leaveOf } from './leave-of';
import { recordConsent } from './record-consent';
import { exportWords } from '#core/words/export';
import { rich } from '../ui/rich';

interface Props {
  readonly leave: LeaveToShow;
  readonly sessions: readonly OpenSwim[];
  readonly once: boolean;
  readonly onOnce: (once: boolean) => void;
}

/** Consent that was recorded here just now, to be taken back. */
interface Recorded {
  readonly session: OpenSwim;
  readonly words: string;
}

/**
 * Asked before pictures of a swimmer without recorded consent are saved: the consent is recorded, with its day and who gave it,
 * and then not asked for again; or the coach holds it this once. Shows nothing where nothing need be asked.
 */
export function ConsentQuestion({ leave, sessions, once, onOnce }: Props) {
  const [givenBy, setGivenBy] = useState('');
  const [givenOn, setGivenOn] = useState(() => isoDayOf(Date.now()));
  const [recorded, setRecorded] = useState<Recorded | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  // of two swimmers one after the other: each has a guardian of their own
  const asked = sessions.find((session) => leaveOf([session]).kind === 'ask');
  const name = asked?.document.swim().card.swimmerName.trim() ?? '';

  const write = async (
    session: OpenSwim,
    consent: Parameters<typeof recordConsent>[2],
    then: Recorded | null,
  ): Promise<void> => {
    setBusy(true);
    const written = await recordConsent(session, sessions, consent);
    setBusy(false);
    setTrouble(written.ok ? null : `${errorWords(written.error).what} ${errorWords(written.error).todo}`);
    if (written.ok) setRecorded(then);
  };
  const record = async (): Promise<void> => {
    const by = givenBy.trim();
    if (!asked || by === '' || busy) return;
    await write(
      asked,
      { givenOn, givenBy: by, note: '' },
      { session: asked, words: exportWords('writtenConsentShow', { name, day: dayWords(givenOn), by }) },
    );
    setGivenBy('');
  };

  return (
    <>
      {recorded && (
        <p className="consent-recorded">
          <output>
            {rich(
              exportWords.parts('recorded', {
                recorded: recorded.words,
                span: (inside) => <span aria-hidden="true">{inside}</span>,
              }),
            )}
          </output>
          <button type="button" disabled={busy} onClick={() => void write(recorded.session, null, null)}>
            {exportWords('takeBack')}
          </button>
        </p>
      )}
      {leave.kind === 'ask' && (
        <section className="consent-question" aria-label={exportWords('consent')}>
          <p>{exportWords('noWrittenConsent', { namesIn: namesInWords(leave.names) })}</p>
          {name !== '' && (
            <div className="consent-record">
              <label>
                {leave.names.length > 1 ? exportWords('given', { name }) : exportWords('given2')}
                <input
                  value={givenBy}
                  maxLength={120}
                  placeholder={exportWords('swimmerOrGuardian')}
                  onChange={(event) => setGivenBy(event.target.value)}
                  onKeyDown={(event) => {
                    if (event.key !== 'Enter') return;
                    event.preventDefault();
                    void record();
                  }}
                />
              </label>
              <label>
                {exportWords('on')}
                <input
                  type="date"
                  value={givenOn}
                  onChange={(event) => event.target.value && setGivenOn(event.target.value)}
                />
              </label>
              <button
                type="button"
                disabled={busy || givenBy.trim() === ''}
                onClick={() => void record()}
                title={withKey(exportWords('putSwimmersCard'), {
                  keys: ['Enter'],
                })}
              >
                {exportWords('recordConsent')}
              </button>
            </div>
          )}
          <label className="consent-once">
            <input type="checkbox" checked={once} onChange={(event) => onOnce(event.target.checked)} />
            <span>{exportWords('justOnceIHold')}</span>
          </label>
          {trouble && <p role="alert">{trouble}</p>}
        </section>
      )}
    </>
  );
}
