import { useStore } from 'zustand';
import type { EventProposal } from '#core/follow/propose-events';
import { eventWords } from '#core/marks/mark-words';
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
  const what = group.of === 'stroke' ? 'stroke' : 'kicks';
  const moved = frame - proposal.frame;
  return (
    <section className="scale-form review" aria-label="Review">
      <header className="review-head">
        <strong>
          {group.of === 'stroke' ? 'Stroke' : 'Kicks'} {group.number} of {groups.length}
        </strong>
        <span className="follow-state">
          {group.accepted} accepted, {group.open.length} left
        </span>
      </header>
      <p role="status" className="review-moment">
        <MomentGlyph proposal={proposal} />
        <b>{eventWords[proposal.kind]}</b> ± {Math.round(1960 * proposal.sdSeconds)} ms
        {proposal.unsure && ', less sure'}
        {moved !== 0 && (
          <em>
            {' '}
            {Math.abs(moved)} {Math.abs(moved) === 1 ? 'frame' : 'frames'} {moved < 0 ? 'earlier' : 'later'}
          </em>
        )}
      </p>
      <ul className="review-stroke" aria-label={`Left of this ${what}`}>
        {group.open.map((each) => (
          <li key={each.id}>
            <button
              type="button"
              aria-pressed={each.id === proposal.id}
              aria-label={`${eventWords[each.kind]} on frame ${each.frame + 1}${each.unsure ? ', less sure' : ''}`}
              title={`${eventWords[each.kind]}, frame ${each.frame + 1}`}
              onClick={() => lookAt(session, each)}
            >
              <MomentGlyph proposal={each} />
            </button>
          </li>
        ))}
      </ul>
      <Answers proposal={proposal} what={what} moved={moved !== 0} />
    </section>
  );
}

const MomentGlyph = ({ proposal }: { readonly proposal: EventProposal }) => (
  <svg width="20" height="20" viewBox="-11 -11 22 22" aria-hidden="true">
    <Glyph kind={proposal.kind} hollow />
  </svg>
);

function Answers({
  proposal,
  what,
  moved,
}: {
  readonly proposal: EventProposal;
  readonly what: string;
  readonly moved: boolean;
}) {
  const tip = useTip();
  const keyOf = useKeyOf();
  const session = useOpenSwim();
  const button = (id: string, words: string, about: string, run: () => void, primary = false) => (
    <button type="button" className={primary ? 'primary' : ''} onClick={run} title={tip(id, about)}>
      {words} <kbd>{keyOf(id)}</kbd>
    </button>
  );
  const here = (): void => accept(session, proposal, session.view.getState().frame);
  return (
    <>
      <div className="question-answers">
        {button(
          'review-accept',
          `Accept the ${what}`,
          `Everything of the ${what} that is sure`,
          () => acceptGroup(session),
          true,
        )}
        {button(
          'proposal-accept',
          moved ? 'Accept here' : 'Accept',
          moved ? 'On the frame shown, as your own mark' : 'This moment, with the machine’s ±',
          here,
        )}
        {button('proposal-reject', 'Reject', 'This moment', () => reject(session, proposal))}
        {button('proposal-next', 'Next', 'The next moment; this one stays open', () => lookAtNext(session))}
        {button('review-doubtful', 'Most doubtful', 'The moment that is known worst', () =>
          lookAtMostDoubtful(session),
        )}
        {button('review-reject', `Reject the ${what}`, `All that is left of the ${what}`, () =>
          rejectGroup(session),
        )}
        {button('review-end', 'Done', 'Put the review away', () => endReview(session))}
      </div>
      <p>Arrows step from picture to picture; Accept then takes the frame shown.</p>
    </>
  );
}
