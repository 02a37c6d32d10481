import type { Command } from '../ui/command';
import { followWords } from '#core/words/follow';
import type { OpenSwim } from '../open-swim/open-swim';
import {
  accept,
  acceptAll,
  lookAtNext,
  lookedAt,
  proposalsOf,
  reject,
  rejectAll,
  sureProposals,
} from '../open-swim/proposals';
import { acceptGroup, endReview, groupLookedAt, lookAtMostDoubtful, rejectGroup } from '../open-swim/review';

/** Deciding what is proposed, moment by moment or a stroke at once, by key. */
export function reviewCommands(session: OpenSwim): readonly Command[] {
  const { document } = session;
  return [
    {
      id: 'review-doubtful',
      label: followWords('toMostDoubtful'),
      keys: ['u'],
      kind: 'view',
      enabled: () => proposalsOf(document.swim()).length > 0,
      run: () => lookAtMostDoubtful(session),
    },
    {
      id: 'proposal-next',
      label: followWords('nextProposedMark'),
      keys: ['p'],
      kind: 'view',
      run: () => lookAtNext(session),
    },
    {
      id: 'proposal-accept',
      label: followWords('acceptProposedMark'),
      keys: ['k'],
      kind: 'undoable',
      enabled: () => lookedAt(session) !== null,
      run: () => {
        const proposal = lookedAt(session);
        if (!proposal) return;
        accept(session, proposal, session.view.getState().frame);
      },
    },
    {
      id: 'proposal-reject',
      label: followWords('rejectProposedMark'),
      keys: ['j'],
      kind: 'undoable',
      enabled: () => lookedAt(session) !== null,
      run: () => {
        const proposal = lookedAt(session);
        if (proposal) reject(session, proposal);
      },
    },
    {
      id: 'review-accept',
      label: followWords('acceptWholeStroke'),
      keys: ['Shift+K'],
      kind: 'undoable',
      enabled: () => groupLookedAt(session) !== null,
      run: () => acceptGroup(session),
    },
    {
      id: 'review-reject',
      label: followWords('rejectWholeStroke'),
      keys: ['Shift+J'],
      kind: 'undoable',
      enabled: () => groupLookedAt(session) !== null,
      run: () => rejectGroup(session),
    },
    {
      id: 'review-end',
      label: followWords('reviewEnd'),
      keys: ['Escape'],
      kind: 'view',
      enabled: () => lookedAt(session) !== null && session.view.getState().tool === 'point',
      run: () => endReview(session),
    },
    {
      id: 'proposals-accept',
      label: followWords('acceptAllProposed'),
      keys: ['Alt+k'],
      kind: 'undoable',
      enabled: () => sureProposals(document.swim()).length > 0,
      run: () => acceptAll(session),
    },
    {
      id: 'proposals-reject',
      label: followWords('rejectAllProposed'),
      keys: ['Alt+j'],
      kind: 'undoable',
      enabled: () => proposalsOf(document.swim()).length > 0,
      run: () => rejectAll(session),
    },
  ];
}
