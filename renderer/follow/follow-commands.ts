import type { Command } from '../ui/command';
import type { OpenSwim } from '../open-swim/open-swim';
import { askedPoint, askNext, cancelFollowing, followPoints, keepAsked, layNextLine } from './follow-actions';
import { linesWanted, questionsOf } from '../open-swim/follow-selectors';
import { acceptGroup, endReview, groupLookedAt, lookAtMostDoubtful, rejectGroup } from '../open-swim/review';
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
import { followWords } from '#core/words/follow';

/** Following and deciding, by key. */
export function followCommands(session: OpenSwim): readonly Command[] {
  const { follow, document } = session;
  return [
    {
      id: 'follow',
      label: followWords('followPointsBetween'),
      keys: ['o'],
      kind: 'undoable',
      run: () => {
        follow.setState({ open: true });
        return followPoints(session, 'new');
      },
    },
    {
      id: 'follow-panel',
      label: followWords('showOrPutAway'),
      keys: ['Shift+O'],
      kind: 'view',
      run: () => follow.setState({ open: !follow.getState().open }),
    },
    {
      id: 'follow-cancel',
      label: followWords('cancelFollowing'),
      keys: ['Escape'],
      kind: 'never',
      enabled: () => follow.getState().share !== null,
      run: () => cancelFollowing(session),
    },
    {
      id: 'follow-line',
      label: followWords('nextKickTopNeeds'),
      keys: ['Shift+B'],
      kind: 'view',
      enabled: () => linesWanted(document.swim()).length > 0,
      run: () => layNextLine(session),
    },
    {
      id: 'follow-ask',
      label: followWords('unsurePointHelps'),
      keys: ['u'],
      kind: 'view',
      enabled: () => questionsOf(document.swim()).length > 0,
      run: () => askNext(session),
    },
    {
      id: 'review-doubtful',
      label: 'To the most doubtful proposed mark, once no point is unsure',
      keys: ['u'],
      kind: 'view',
      enabled: () => proposalsOf(document.swim()).length > 0,
      run: () => lookAtMostDoubtful(session),
    },
    {
      id: 'follow-right',
      label: followWords('pointAskedRight'),
      keys: ['k'],
      kind: 'undoable',
      enabled: () => askedPoint(session) !== null,
      run: () => keepAsked(session),
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
      label: 'Accept the whole stroke',
      keys: ['Shift+K'],
      kind: 'undoable',
      enabled: () => groupLookedAt(session) !== null,
      run: () => acceptGroup(session),
    },
    {
      id: 'review-reject',
      label: 'Reject the whole stroke',
      keys: ['Shift+J'],
      kind: 'undoable',
      enabled: () => groupLookedAt(session) !== null,
      run: () => rejectGroup(session),
    },
    {
      id: 'review-end',
      label: 'Put the review away',
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
