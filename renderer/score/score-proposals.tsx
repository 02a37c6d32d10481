import { memo } from 'react';
import type { EventProposal } from '#core/follow/propose-events';
import { eventWords } from '#core/marks/mark-words';
import { Glyph } from './glyph';
import type { ScoreAxis } from '../open-swim/score-axis';
import { glyphHeight, type ScoreLayout } from './score-layout';
import { scoreWords } from '#core/words/score';

interface Props {
  readonly proposals: readonly EventProposal[];
  readonly axis: ScoreAxis;
  readonly layout: ScoreLayout;
  readonly lookingId: string | null;
  /** The one that is dragged, and the real seconds it is held over. */
  readonly dragged: { readonly id: string; readonly time: number } | null;
  readonly onLook: (proposal: EventProposal) => void;
}

/** Hollow glyphs for what is only proposed. Click looks at one; dragging it accepts it where it is let go. */
export const ScoreProposals = memo(function ScoreProposals(props: Props) {
  const { proposals, axis, layout, lookingId, dragged, onLook } = props;
  const tabStop = proposals.some(({ id }) => id === lookingId) ? lookingId : (proposals[0]?.id ?? null);
  return (
    <g className="score-proposals">
      {proposals.map((proposal) => {
        const x = axis.toX(dragged?.id === proposal.id ? dragged.time : proposal.time);
        if (x < axis.left - 10 || x > axis.right + 10) return null;
        const chosen = proposal.id === lookingId;
        const words = scoreWords('proposedFrame', {
          event: eventWords[proposal.kind].toLowerCase(),
          frame: proposal.frame + 1,
        });
        return (
          // biome-ignore lint/a11y/useSemanticElements: an SVG drawing can hold no button element
          <g
            key={proposal.id}
            role="button"
            tabIndex={proposal.id === tabStop ? 0 : -1}
            aria-pressed={chosen}
            aria-label={words}
            className={`glyph${chosen ? ' chosen' : ''}`}
            data-proposal={proposal.id}
            transform={`translate(${x.toFixed(2)},${glyphHeight(layout, proposal.kind).toFixed(2)})`}
            onKeyDown={(key) => {
              if (key.key !== 'Enter') return;
              key.preventDefault();
              key.stopPropagation();
              onLook(proposal);
            }}
          >
            <rect x={-13} y={-15} width={26} height={30} fill="transparent" />
            {chosen && <rect x={-12.5} y={-13.5} width={25} height={27} rx={6} className="glyph-chosen" />}
            <Glyph kind={proposal.kind} hollow />
            <title>{scoreWords('kAcceptsJRejects', { words })}</title>
          </g>
        );
      })}
    </g>
  );
});
