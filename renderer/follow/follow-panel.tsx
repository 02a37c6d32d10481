import { useStore } from 'zustand';
import { useOpenSwim, useSwim } from '../open-swim/open-swim';
import { dropFollowed } from '../open-swim/follow-commands';
import { cancelFollowing, followPoints, layNextLine } from './follow-actions';
import { allPieces, linesWanted, openPieces } from '../open-swim/follow-selectors';
import { ProposalList } from './proposal-list';
import { QuestionList } from './question-list';
import { SeeSection } from '../see/see-section';
import './follow.css';
import { useTip } from '../ui/use-tip';

/** Follow the points, answer what is asked, decide on what is proposed. Stands where the readings stand. */
export function FollowPanel() {
  const tip = useTip();
  const session = useOpenSwim();
  const share = useStore(session.follow, (state) => state.share);
  const outcome = useStore(session.follow, (state) => state.outcome);
  const hasFilm = useStore(session.film, (state) => state.source !== null);
  const pieces = useSwim((swim) => allPieces(swim.postures));
  const open = useSwim(openPieces);
  const followed = useSwim((swim) => swim.followed);
  const wanted = useSwim(linesWanted);
  const running = share !== null;
  const pictures = open.reduce((sum, { first, last }) => sum + last - first - 1, 0);
  return (
    <aside className="readings follow" aria-label="Follow and propose">
      <header className="follow-head">
        <h2>Follow the points</h2>
        <button
          type="button"
          onClick={() => session.follow.setState({ open: false })}
          title={tip('follow-panel', 'Back to the readings')}
        >
          Readings
        </button>
      </header>
      <SeeSection />
      {pieces.length === 0 ? (
        <div className="follow-teach">
          <p>
            Lay a body line on two frames of one movement (<kbd>B</kbd>), some ten to twenty frames apart:
            Submark then follows each point through the frames between.
          </p>
          <p>
            Best: a line where the stretch begins and ends, and one a stroke between, on a kick top. Then
            answer what is asked.
          </p>
        </div>
      ) : (
        <section aria-label="What is followed">
          {running ? (
            <>
              <progress max={1} value={share} aria-label="Following" />
              <p className="follow-state">Following: {Math.round(100 * share)} %</p>
              <button type="button" onClick={() => cancelFollowing(session)}>
                Cancel
              </button>
            </>
          ) : (
            <>
              <p className="follow-state">
                {open.length > 0
                  ? `${open.length} ${open.length === 1 ? 'stretch' : 'stretches'} between body lines to follow, ${pictures} pictures.`
                  : 'Every stretch between body lines is followed.'}
              </p>
              <div className="follow-row">
                <button
                  type="button"
                  className="primary"
                  disabled={open.length === 0 || !hasFilm}
                  onClick={() => void followPoints(session, 'new')}
                >
                  Follow the points <kbd>O</kbd>
                </button>
                {followed.length > 0 && (
                  <>
                    <button
                      type="button"
                      disabled={!hasFilm}
                      onClick={() => void followPoints(session, 'all')}
                    >
                      All again
                    </button>
                    <button type="button" onClick={() => session.document.run(dropFollowed())}>
                      Forget
                    </button>
                  </>
                )}
              </div>
            </>
          )}
          {outcome && (
            <p className="follow-outcome" role="status">
              {outcome}
            </p>
          )}
        </section>
      )}
      {wanted.length > 0 && !running && (
        <section aria-label="Body lines that help most">
          <p className="follow-state">
            One body line a stroke helps most on a kick top: {wanted.length} of the marked ones{' '}
            {wanted.length === 1 ? 'wants' : 'want'} one.
          </p>
          <button type="button" onClick={() => layNextLine(session)}>
            Lay the line on frame {(wanted[0] ?? 0) + 1} <kbd>Shift B</kbd>
          </button>
        </section>
      )}
      {followed.length > 0 && <QuestionList />}
      <ProposalList />
      <p className="readings-foot">
        Followed points are drawn hollow and are the machine’s guess: your own marks are never moved. Readings
        use a followed point only where it is sure, and a proposed mark only when you have accepted it.
      </p>
    </aside>
  );
}
