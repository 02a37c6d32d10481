import { useStore } from 'zustand';
import type { EventProposal } from '#core/follow/propose-events';
import { eventWords } from '#core/marks/mark-words';
import { followWords } from '#core/words/follow';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { accept, lookAt, lookAtNext, proposalsOf, reject } from '../open-swim/proposals';
import { acceptGroup, endReview, lookAtMostDoubtful, rejectGroup, reviewGroupsOf } from '../open-swim/review';
import { Glyph } from '../score/glyph';
import { useKeyOf, useTip } from '../ui/use-tip';

/** One proposed moment of one stroke, beside the picture: right, elsewhere, or nothing at all? */
export function ReviewForm() {
  const session = useOpenSwim();
  const looking = useStore(session.follow, (state) => state.looking);
  const proposal = useSwim((swim) => proposalsOf(swim).find(({ id }) => id === looking) ?? null);
  const groups = useSwim(reviewGroupsOf);
  const busy = useView((state) => state.tool !== 'point' || state.question !== null);
  const frame = useView((state) => state.frame);
  const group = groups.find(({ open }) => open.some(({ id }) => id === proposal?.id));
  if (!proposal || !group || busy) return null;
  const { of, number } = group;
  const moved = frame - proposal.frame;
  return (
    <section className="scale-form review" aria-label={followWords('review')}>
      <header className="review-head">
        <strong>{followWords('reviewGroup', { of, number, count: groups.length })}</strong>
        <span className="follow-state">
          {followWords('reviewLeft', { accepted: group.accepted, left: group.open.length })}
        </span>
      </header>
      <p role="status" className="review-moment">
        <MomentGlyph proposal={proposal} />
        <b>{eventWords[proposal.kind]}</b>{' '}
        {followWords('reviewSpread', { ms: Math.round(1960 * proposal.sdSeconds) })}
        {proposal.unsure && followWords('reviewUnsure')}
        {moved !== 0 && (
          <em>
            {' '}
            {followWords('reviewMoved', { frames: Math.abs(moved), way: moved < 0 ? 'earlier' : 'later' })}
          </em>
        )}
      </p>
      <ul className="review-stroke" aria-label={followWords('reviewOpen', { of })}>
        {group.open.map((each) => (
          <li key={each.id}>
            <button
              type="button"
              aria-pressed={each.id === proposal.id}
              aria-label={momentWords(each)}
              title={momentWords(each)}
              onClick={() => lookAt(session, each)}
            >
              <MomentGlyph proposal={each} />
            </button>
          </li>
        ))}
      </ul>
      <Answers proposal={proposal} of={of} moved={moved !== 0} />
    </section>
  );
}

function momentWords({ kind, frame, unsure }: EventProposal): string {
  const said = followWords('frame', { event: eventWords[kind], frame: frame + 1 });
  return unsure ? said + followWords('reviewUnsure') : said;
}

const MomentGlyph = ({ proposal }: { readonly proposal: EventProposal }) => (
  <svg width="20" height="20" viewBox="-11 -11 22 22" aria-hidden="true">
    <Glyph kind={proposal.kind} hollow />
  </svg>
);

interface AnswersProps {
  readonly proposal: EventProposal;
  readonly of: 'stroke' | 'kicks';
  /** Another frame than the proposed one is shown. */
  readonly moved: boolean;
}

function Answers({ proposal, of, moved }: AnswersProps) {
  const tip = useTip();
  const keyOf = useKeyOf();
  const session = useOpenSwim();
  const button = (id: string, words: string, about: string, run: () => void, primary = false) => (
    <button type="button" className={primary ? 'primary' : ''} onClick={run} title={tip(id, about)}>
      {words} <kbd>{keyOf(id)}</kbd>
    </button>
  );
  const say = followWords;
  const here = (): void => accept(session, proposal, session.view.getState().frame);
  return (
    <>
      <div className="question-answers">
        {button(
          'review-accept',
          say('acceptGroup', { of }),
          say('acceptGroupTip'),
          () => acceptGroup(session),
          true,
        )}
        {moved
          ? button('proposal-accept', say('acceptHere'), say('acceptHereTip'), here)
          : button('proposal-accept', say('acceptMoment'), say('acceptTip'), here)}
        {button('proposal-reject', say('rejectMoment'), say('rejectTip'), () => reject(session, proposal))}
        {button('proposal-next', say('next'), say('nextTip'), () => lookAtNext(session))}
        {button('review-doubtful', say('mostDoubtful'), say('mostDoubtfulTip'), () =>
          lookAtMostDoubtful(session),
        )}
        {button('review-reject', say('rejectGroup', { of }), say('rejectGroupTip'), () =>
          rejectGroup(session),
        )}
        {button('review-end', say('reviewDone'), say('reviewEnd'), () => endReview(session))}
      </div>
      <p>{say('reviewArrows')}</p>
    </>
  );
}
