import { useKeyOf } from '../ui/use-tip';
import { keyCap } from '../ui/key-cap';
import { useEffect, useRef } from 'react';
import { useStore } from 'zustand';
import type { EventProposal } from '#core/follow/propose-events';
import { eventWords } from '#core/marks/mark-words';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { Glyph } from '../score/glyph';
import { useTip } from '../ui/use-tip';
import { startLine } from '../stage/tools/line-tool';
import {
  accept,
  acceptAll,
  lookAt,
  lookAtNext,
  proposalsOf,
  reject,
  rejectAll,
} from '../open-swim/proposals';
import { followWords } from '#core/words/follow';
import { rich } from '../ui/rich';

/** The line that hands and head are judged by. */
const drawn = 'surface';

/** Marks the traces speak for. Nothing is a mark until the coach says so. */
export function ProposalList() {
  const tip = useTip();
  const session = useOpenSwim();
  const keyOf = useKeyOf();
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
    <section aria-label={followWords('proposedMarks')}>
      <h2>{followWords('proposedMarks')}</h2>
      {wantsSurface && (
        <div className="follow-row">
          <p className="follow-state">{followWords('drawWaterSurface')}</p>
          <button type="button" onClick={() => startLine(session, drawn)}>
            {rich(followWords.parts('drawSurface2', { key: keyOf(`scene-${drawn}`), kbd: keyCap }))}
          </button>
        </div>
      )}
      {proposals.length === 0 ? (
        decided && <p className="follow-state">{followWords('noMoreSuggestions')}</p>
      ) : (
        <>
          <p className="follow-state">{followWords('hollowGlyphsScore', { count: proposals.length })}</p>
          <div className="follow-row">
            <button type="button" className="primary" onClick={() => lookAtNext(session)}>
              {followWords('reviewStrokes')} <kbd>{keyOf('proposal-next')}</kbd>
            </button>
            {sure > 0 && (
              <button
                type="button"
                onClick={() => acceptAll(session)}
                title={tip('proposals-accept', followWords('acceptAllTip'))}
              >
                {sure === proposals.length ? followWords('acceptAll') : followWords('acceptSure')} {sure}
              </button>
            )}
            <button
              type="button"
              onClick={() => rejectAll(session)}
              title={tip('proposals-reject', followWords('rejectAllTip'))}
            >
              {followWords('rejectAll')}
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
  const words = followWords('frame', { event: eventWords[proposal.kind], frame: proposal.frame + 1 });
  return (
    <li ref={row} className={chosen ? 'proposal chosen' : 'proposal'}>
      <button
        type="button"
        className="proposal-go"
        aria-pressed={chosen}
        onClick={() => lookAt(session, proposal)}
        title={followWords('showFrame')}
      >
        <svg width="20" height="20" viewBox="-11 -11 22 22" aria-hidden="true">
          <Glyph kind={proposal.kind} hollow />
        </svg>
        <span>
          {eventWords[proposal.kind]}
          <small>
            {rich(
              followWords.parts('frameMs', {
                frame: (proposal.frame + 1 + proposal.frames).toFixed(1),
                sdSeconds: Math.round(1960 * proposal.sdSeconds),
                span: (inside) => <span className="proposal-spread">{inside}</span>,
              }),
            )}
            {proposal.unsure && ` ${followWords('lessSure')}`}
          </small>
        </span>
      </button>
      <span className="follow-row">
        <button
          type="button"
          onClick={() => accept(session, proposal)}
          aria-label={followWords('accept', { words })}
        >
          {followWords('accept2')}
        </button>
        {chosen && frame !== proposal.frame && (
          <button
            type="button"
            onClick={() => accept(session, proposal, frame)}
            aria-label={followWords('hereAcceptFrame', {
              event: eventWords[proposal.kind].toLowerCase(),
              frame: frame + 1,
            })}
          >
            {followWords('here')}
          </button>
        )}
        <button
          type="button"
          onClick={() => reject(session, proposal)}
          aria-label={followWords('reject', { words })}
        >
          {followWords('reject2')}
        </button>
      </span>
    </li>
  );
}
