import { useKeyOf } from '../ui/use-tip';
import { keyCap } from '../ui/key-cap';
import { useStore } from 'zustand';
import { useOpenSwim, useSwim } from '../open-swim/open-swim';
import { cancelSeeing, seeSwimmer } from './see-actions';
import { seenOf } from '../open-swim/see-selectors';
import { seeStoreOf } from '../open-swim/see-store';
import { dropSeen } from './seen-commands';
import { seeWords } from '#core/words/see';
import { rich } from '../ui/rich';

/** See the swimmer without a mark: the button, what is under way, what came of it. */
export function SeeSection() {
  const session = useOpenSwim();
  const keyOf = useKeyOf();
  const { running, outcome, several } = useStore(seeStoreOf(session));
  const hasFilm = useStore(session.film, (state) => state.source !== null);
  const pictures = useSwim((swim) => seenOf(swim).size);
  return (
    <section aria-label={seeWords('seeSwimmer')}>
      {running ? (
        <>
          <progress max={1} value={running.share} aria-label={seeWords('seeing2')} />
          <p className="follow-state">
            {seeWords('lookingSwimmer', { share: Math.round(100 * running.share) })}
            {running.perSecond !== null &&
              seeWords('picturesSecond', { perSecond: running.perSecond.toFixed(0) })}
            {running.runsOn === 'graphics' && seeWords('graphicsCard')}
          </p>
          <button type="button" onClick={() => cancelSeeing(session)}>
            {seeWords('cancel')}
          </button>
        </>
      ) : (
        <>
          {pictures === 0 ? (
            <p className="follow-state">{seeWords('submarkLooksSwimmer')}</p>
          ) : (
            <p className="follow-state">{seeWords('seenPicturesNot', { pictures })}</p>
          )}
          <div className="follow-row">
            <button
              type="button"
              className={pictures === 0 ? 'primary' : ''}
              disabled={!hasFilm}
              onClick={() => void seeSwimmer(session)}
            >
              {rich(
                seeWords.parts('s', {
                  key: keyOf('see'),
                  value: pictures === 0 ? seeWords('seeSwimmer') : seeWords('seeAgain'),
                  kbd: keyCap,
                }),
              )}
            </button>
            {pictures > 0 && (
              <button type="button" onClick={() => session.document.run(dropSeen())}>
                {seeWords('forgetSeenPoints')}
              </button>
            )}
          </div>
        </>
      )}
      {several && (
        <div role="status">
          <p className="follow-outcome">
            {seeWords('thereSwimmersFrame', { squares: several.squares.length, frame: several.frame + 1 })}
          </p>
          <div className="follow-row">
            {several.squares.map((square, i) => (
              <button key={`${square.x}`} type="button" onClick={() => void seeSwimmer(session, square)}>
                {seeWords('swimmer', { i: i + 1 })}
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
