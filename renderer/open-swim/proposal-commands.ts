import type { EventProposal } from '#core/follow/propose-events';
import { eventWords } from '#core/marks/mark-words';
import type { EventMark } from '#core/swim-file/swim-schema';
import type { SwimCommand } from './swim-command';
import { openSwimWords } from '#core/words/open-swim';

/**
 * Takes proposals in as marks; `frame` puts a single one on another frame: then its instant is that frame's, and where it was
 * proposed first it is not proposed again.
 */
export function acceptProposals(
  proposals: readonly EventProposal[],
  makeId: () => string,
  said: (proposal: EventProposal) => Pick<EventMark, 'hand' | 'breathTo' | 'metres'>,
  frame?: number,
): SwimCommand {
  const marks = proposals.map(
    (each): EventMark => ({
      ...said(each),
      id: makeId(),
      kind: each.kind,
      frame: frame ?? each.frame,
      from: 'proposal',
      refined:
        frame === undefined || frame === each.frame
          ? { frames: each.frames, sdSeconds: each.sdSeconds }
          : null,
    }),
  );
  const only = marks.length === 1 ? marks[0] : undefined;
  return {
    name: only
      ? openSwimWords('accept', { event: eventWords[only.kind].toLowerCase() })
      : openSwimWords('acceptProposals', { marks: marks.length }),
    ...(only ? { frame: only.frame } : {}),
    change: (draft) => {
      draft.events.push(...marks);
      if (frame !== undefined)
        draft.dismissed.push(
          ...proposals.flatMap((each) =>
            each.frame === frame ? [] : [{ kind: each.kind, frame: each.frame }],
          ),
        );
    },
  };
}

/** Rejects proposals: they are not proposed again. */
export function rejectProposals(proposals: readonly EventProposal[]): SwimCommand {
  const only = proposals.length === 1 ? proposals[0] : undefined;
  return {
    name: only
      ? openSwimWords('reject', { event: eventWords[only.kind].toLowerCase() })
      : openSwimWords('rejectProposals', { proposals: proposals.length }),
    ...(only ? { frame: only.frame } : {}),
    change: (draft) => {
      draft.dismissed.push(...proposals.map(({ kind, frame }) => ({ kind, frame })));
    },
  };
}
