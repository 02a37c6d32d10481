import { useStore } from 'zustand';
import { useOpenSwim, useSwim } from '../open-swim/open-swim';
import { cancelSeeing, seeSwimmer } from './see-actions';
import { seenOf } from '../open-swim/see-selectors';
import { seeStoreOf } from '../open-swim/see-store';
import { dropSeen } from './seen-commands';

/** See the swimmer without a mark: the button, what is under way, what came of it. */
export function SeeSection() {
  const session = useOpenSwim();
  const { running, outcome, several } = useStore(seeStoreOf(session));
  const hasFilm = useStore(session.film, (state) => state.source !== null);
  const pictures = useSwim((swim) => seenOf(swim).size);
  return (
    <section aria-label="See the swimmer">
      {running ? (
        <>
          <progress max={1} value={running.share} aria-label="Seeing" />
          <p className="follow-state">
            Looking for the swimmer: {Math.round(100 * running.share)} %
            {running.perSecond !== null && `, ${running.perSecond.toFixed(0)} pictures a second`}
            {running.runsOn === 'graphics' && ', on the graphics card'}
          </p>
          <button type="button" onClick={() => cancelSeeing(session)}>
            Cancel
          </button>
        </>
      ) : (
        <>
          {pictures === 0 ? (
            <p className="follow-state">
              Submark looks for the swimmer on every picture, lays the nine points without a click, and
              suggests the kicks.
            </p>
          ) : (
            <p className="follow-state">
              Seen on {pictures} pictures, not reviewed. Check the kicks below and accept the right ones.
              Readings use only what you accept or mark.
            </p>
          )}
          <div className="follow-row">
            <button
              type="button"
              className={pictures === 0 ? 'primary' : ''}
              disabled={!hasFilm}
              onClick={() => void seeSwimmer(session)}
            >
              {pictures === 0 ? 'See the swimmer' : 'See again'} <kbd>⇧S</kbd>
            </button>
            {pictures > 0 && (
              <button type="button" onClick={() => session.document.run(dropSeen())}>
                Forget seen points
              </button>
            )}
          </div>
        </>
      )}
      {several && (
        <div role="status">
          <p className="follow-outcome">
            There are {several.squares.length} swimmers on frame {several.frame + 1}. Which one do you want?
          </p>
          <div className="follow-row">
            {several.squares.map((square, i) => (
              <button key={`${square.x}`} type="button" onClick={() => void seeSwimmer(session, square)}>
                Swimmer {i + 1}
              </button>
            ))}
          </div>
        </div>
      )}
      {outcome && (
        <p className="follow-outcome" role="status">
          {outcome}
        </p>
      )}
    </section>
  );
}
