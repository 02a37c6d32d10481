import { useEffect, useRef } from 'react';
import { useStore } from 'zustand';
import type { EventProposal } from '#core/follow/propose-events';
import { eventWords } from '#core/marks/mark-words';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { Glyph } from '../score/glyph';
import { startLine } from '../stage/tools/line-tool';
import { accept, acceptAll, lookAt, proposalsOf, reject, rejectAll } from '../open-swim/proposals';

/** Marks the traces speak for. Nothing is a mark until the coach says so. */
export function ProposalList() {
  const session = useOpenSwim();
  const proposals = useSwim(proposalsOf);
  const followed = useSwim((swim) => swim.followed.length > 0);
  const surface = useSwim((swim) => swim.scene.surface !== null);
  const stroking = useSwim((swim) => swim.card.arms === 'stroking');
  const looking = useStore(session.follow, (state) => state.looking);
  const decided = useSwim(
    (swim) => swim.dismissed.length > 0 || swim.events.some(({ from }) => from === 'proposal'),
  );
  const wantsSurface = followed && stroking && !surface;
  const sure = proposals.filter(({ unsure }) => !unsure).length;
  // where nothing was ever proposed there is nothing to say
  if (proposals.length === 0 && !decided && !wantsSurface) return null;
  return (
    <section aria-label="Proposed marks">
      <h2>Proposed marks</h2>
      {wantsSurface && (
        <div className="follow-row">
          <p className="follow-state">Draw the water surface, and hand entries and exits are proposed too.</p>
          <button type="button" onClick={() => startLine(session, 'surface')}>
            Draw the surface <kbd>2</kbd>
          </button>
        </div>
      )}
      {proposals.length === 0 ? (
        decided && <p className="follow-state">No more suggestions.</p>
      ) : (
        <>
          <p className="follow-state">
            Hollow glyphs on the score. <kbd>P</kbd> goes to the next, <kbd>K</kbd> accepts it on the frame
            shown, <kbd>J</kbd> rejects it. Or drag one to where it belongs.
          </p>
          <div className="follow-row">
            {sure > 0 && (
              <button type="button" onClick={() => acceptAll(session)}>
                {sure === proposals.length ? 'Accept all' : 'Accept the sure'} {sure} <kbd>⇧K</kbd>
              </button>
            )}
            <button type="button" onClick={() => rejectAll(session)}>
              Reject all <kbd>⇧J</kbd>
            </button>
          </div>
          <ul className="follow-list">
            {proposals.map((proposal) => (
              <ProposalRow key={proposal.id} proposal={proposal} chosen={proposal.id === looking} />
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function ProposalRow({ proposal, chosen }: { readonly proposal: EventProposal; readonly chosen: boolean }) {
  const session = useOpenSwim();
  const frame = useView((state) => state.frame);
  const row = useRef<HTMLLIElement>(null);
  useEffect(() => {
    if (chosen) row.current?.scrollIntoView({ block: 'nearest' });
  }, [chosen]);
  const words = `${eventWords[proposal.kind]} on frame ${proposal.frame + 1}`;
  return (
    <li ref={row} className={chosen ? 'proposal chosen' : 'proposal'}>
      <button
        type="button"
        className="proposal-go"
        aria-pressed={chosen}
        onClick={() => lookAt(session, proposal)}
        title="Show this frame"
      >
        <svg width="20" height="20" viewBox="-11 -11 22 22" aria-hidden="true">
          <Glyph kind={proposal.kind} hollow />
        </svg>
        <span>
          {eventWords[proposal.kind]}
          <small>
            frame {(proposal.frame + 1 + proposal.frames).toFixed(1)} ·{' '}
            <span className="proposal-spread">± {Math.round(1960 * proposal.sdSeconds)} ms</span>
            {proposal.unsure && ' · less sure'}
          </small>
        </span>
      </button>
      <span className="follow-row">
        <button type="button" onClick={() => accept(session, proposal)} aria-label={`Accept ${words}`}>
          Accept
        </button>
        {chosen && frame !== proposal.frame && (
          <button
            type="button"
            onClick={() => accept(session, proposal, frame)}
            aria-label={`Here: accept ${eventWords[proposal.kind].toLowerCase()} on frame ${frame + 1} instead`}
          >
            Here
          </button>
        )}
        <button type="button" onClick={() => reject(session, proposal)} aria-label={`Reject ${words}`}>
          Reject
        </button>
      </span>
    </li>
  );
}
