import { keyCap } from '../ui/key-cap';
import { useStore } from 'zustand';
import { useOpenSwim, useSwim } from '../open-swim/open-swim';
import { dropFollowed } from '../open-swim/follow-commands';
import { cancelFollowing, followPoints, layNextLine } from './follow-actions';
import { allPieces, linesWanted, openPieces } from '../open-swim/follow-selectors';
import { ProposalList } from './proposal-list';
import { QuestionList } from './question-list';
import { SeeSection } from '../see/see-section';
import './follow.css';
import { useKeyOf, useTip } from '../ui/use-tip';
import { followWords } from '#core/words/follow';
import { rich } from '../ui/rich';

/** Follow the points, answer what is asked, decide on what is proposed. Stands where the readings stand. */
export function FollowPanel() {
  const tip = useTip();
  const keyOf = useKeyOf();
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
    <aside className="readings follow" aria-label={followWords('followPropose')}>
      <header className="follow-head">
        <h2>{followWords('followPoints')}</h2>
        <button
          type="button"
          onClick={() => session.follow.setState({ open: false })}
          title={tip('follow-panel', followWords('backReadings'))}
        >
          {followWords('readings')}
        </button>
      </header>
      <SeeSection />
      {pieces.length === 0 ? (
        <div className="follow-teach">
          <p>{rich(followWords.parts('layBodyLineTwoFrames', { key: keyOf('body-line'), kbd: keyCap }))}</p>
          <p>{followWords('bestLineWhere')}</p>
        </div>
      ) : (
        <section aria-label={followWords('whatFollowed')}>
          {running ? (
            <>
              <progress max={1} value={share} aria-label={followWords('following')} />
              <p className="follow-state">
                {followWords('followingShare', { share: Math.round(100 * share) })}
              </p>
              <button type="button" onClick={() => cancelFollowing(session)}>
                {followWords('cancel')}
              </button>
            </>
          ) : (
            <>
              <p className="follow-state">
                {open.length > 0
                  ? followWords('stretchesBetweenBody', { open: open.length, pictures })
                  : followWords('everyStretchBetween')}
              </p>
              <div className="follow-row">
                <button
                  type="button"
                  className="primary"
                  disabled={open.length === 0 || !hasFilm}
                  onClick={() => void followPoints(session, 'new')}
                >
                  {rich(followWords.parts('followPointsO', { key: keyOf('follow'), kbd: keyCap }))}
                </button>
                {followed.length > 0 && (
                  <>
                    <button
                      type="button"
                      disabled={!hasFilm}
                      onClick={() => void followPoints(session, 'all')}
                    >
                      {followWords('allAgain')}
                    </button>
                    <button type="button" onClick={() => session.document.run(dropFollowed())}>
                      {followWords('forget')}
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
        <section aria-label={followWords('bodyLinesHelp')}>
          <p className="follow-state">{followWords('oneBodyLineStroke', { wanted: wanted.length })}</p>
          <button type="button" onClick={() => layNextLine(session)}>
            {rich(
              followWords.parts('layLineFrame', {
                key: keyOf('follow-line'),
                wanted: (wanted[0] ?? 0) + 1,
                kbd: keyCap,
              }),
            )}
          </button>
        </section>
      )}
      {followed.length > 0 && <QuestionList />}
      <ProposalList />
      <p className="readings-foot">{followWords('followedPointsDrawn')}</p>
    </aside>
  );
}
