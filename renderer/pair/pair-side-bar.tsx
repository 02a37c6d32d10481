import { realTimeOf } from '#core/timeline/clip-clock';
import { markPhrase } from '#core/marks/mark-words';
import { useStore } from 'zustand';
import { placeOfFrame } from '#core/compare/pair-clock';
import { usePair, usePairPart, usePairView } from './pair-session';
import { goToLock, readMode, setStretch } from './pair-steps';
import { letterOf, type Which, withEach } from './pair-view';
import { placeWords } from './place-words';
import { useTip } from '../ui/use-tip';
import { pairWords } from '#core/words/pair';

/** What one swim of the pair is locked on, where it stands, and which stretch of it is looked at. */
export function PairSideBar({ which }: { readonly which: Which }) {
  const tip = useTip();
  const session = usePair();
  const { swim, side, cycle } = usePairPart(which);
  const leads = usePairView((state) => state.lead === which);
  const lock = usePairView((state) => state.locks[which]);
  const mirrored = usePairView((state) => state.mirrored[which]);
  const mode = usePairView((state) => readMode(state.mode));
  const frame = useStore(session.swims[which].view, (state) => state.frame);
  const waiting = useStore(session.swims[which].view, (state) => state.shownFrame !== state.frame);
  const hasFilm = useStore(session.swims[which].film, (state) => state.source !== null);
  const letter = letterOf(which);
  const count = side.clock.table.starts.length;
  const isWhole = side.first === 0 && side.last === count - 1;
  const events = [...swim.events].sort((p, q) => p.frame - q.frame);
  const lead = (): void => session.view.setState({ lead: which });
  return (
    <section className="pair-side" aria-label={pairWords('swim', { letter })}>
      <button
        type="button"
        className="pair-lead"
        aria-pressed={leads}
        onClick={lead}
        title={tip(which === 0 ? 'step-a' : 'step-b', pairWords('stepOtherFollows', { letter }))}
      >
        {letter}
      </button>
      <output
        className={`where${waiting && hasFilm ? ' waiting' : ''}`}
        data-side={letter}
        data-frame={frame}
        aria-live="off"
      >
        <strong className="where-frame">{pairWords('frameFrame', { frame: frame + 1, count })}</strong>
        <small className="where-time">
          {realTimeOf(side.clock, frame).toFixed(3)} s ·{' '}
          {placeWords(placeOfFrame(side, mode, frame), mode, cycle)}
        </small>
      </output>
      <label className="pair-lock">
        <span>{pairWords('locked')}</span>
        <select
          aria-label={pairWords('lockedLetter', { letter })}
          title={pairWords('momentPairLocked', { letter })}
          value={lock.on === 'event' ? lock.id : ''}
          onChange={(change) => {
            const id = change.target.value;
            const { locks } = session.view.getState();
            session.view.setState({
              locks: withEach(locks, which, id === '' ? { on: 'frame', frame } : { on: 'event', id }),
              scoreSpan: null,
            });
            goToLock(session);
          }}
        >
          <option value="">
            {lock.on === 'frame' ? pairWords('frame2', { frame: lock.frame + 1 }) : pairWords('frameShown')}
          </option>
          {events.map((event) => (
            <option key={event.id} value={event.id}>
              {markPhrase(event)} · {realTimeOf(side.clock, event.frame).toFixed(2)} s
            </option>
          ))}
        </select>
      </label>
      <button
        type="button"
        aria-pressed={mirrored}
        onClick={() => {
          lead();
          const now = session.view.getState().mirrored;
          session.view.setState({ mirrored: withEach(now, which, !mirrored) });
        }}
        title={tip('mirror', pairWords('showMirror', { letter }))}
      >
        ⇋ <span className="wide-words">{pairWords('mirror')}</span>
      </button>
      <fieldset className="switch" aria-label={pairWords('stretch', { letter })}>
        <button
          type="button"
          onClick={() => {
            lead();
            setStretch(session, 'first');
          }}
          aria-label={pairWords('stretchBeginsHereLetter', { letter })}
          title={tip('stretch-from', pairWords('stretchBeginsHereLetter', { letter }))}
        >
          [
        </button>
        <button
          type="button"
          onClick={() => {
            lead();
            setStretch(session, 'last');
          }}
          aria-label={pairWords('stretchEndsHereLetter', { letter })}
          title={tip('stretch-to', pairWords('stretchEndsHereLetter', { letter }))}
        >
          ]
        </button>
        <button
          type="button"
          disabled={isWhole}
          onClick={() => {
            lead();
            setStretch(session, null);
          }}
          title={tip('stretch-all', pairWords('wholeClipAgain'))}
        >
          {isWhole ? pairWords('whole') : `${side.first + 1}–${side.last + 1}`}
        </button>
      </fieldset>
    </section>
  );
}
