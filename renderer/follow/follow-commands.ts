import type { Command } from '../ui/command';
import type { OpenSwim } from '../open-swim/open-swim';
import { askedPoint, askNext, cancelFollowing, followPoints, keepAsked, layNextLine } from './follow-actions';
import { linesWanted, questionsOf } from '../open-swim/follow-selectors';
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

/** Following and deciding, by key. */
export function followCommands(session: OpenSwim): readonly Command[] {
  const { follow, document } = session;
  return [
    {
      id: 'follow',
      label: 'Follow the points between body lines',
      keys: ['o'],
      kind: 'undoable',
      run: () => {
        follow.setState({ open: true });
        return followPoints(session, 'new');
      },
    },
    {
      id: 'follow-panel',
      label: 'Show or put away following and proposals',
      keys: ['Shift+O'],
      kind: 'view',
      run: () => follow.setState({ open: !follow.getState().open }),
    },
    {
      id: 'follow-cancel',
      label: 'Cancel following',
      keys: ['Escape'],
      kind: 'never',
      enabled: () => follow.getState().share !== null,
      run: () => cancelFollowing(session),
    },
    {
      id: 'follow-line',
      label: 'To the next kick top that needs a body line',
      keys: ['Shift+B'],
      kind: 'view',
      enabled: () => linesWanted(document.swim()).length > 0,
      run: () => layNextLine(session),
    },
    {
      id: 'follow-ask',
      label: 'To the unsure point that helps most; again: to the one after it',
      keys: ['u'],
      kind: 'view',
      enabled: () => questionsOf(document.swim()).length > 0,
      run: () => askNext(session),
    },
    {
      id: 'follow-right',
      label: 'The point asked for is right as it is',
      keys: ['k'],
      kind: 'undoable',
      enabled: () => askedPoint(session) !== null,
      run: () => keepAsked(session),
    },
    {
      id: 'proposal-next',
      label: 'Next proposed mark',
      keys: ['p'],
      kind: 'view',
      run: () => lookAtNext(session),
    },
    {
      id: 'proposal-accept',
      label: 'Accept the proposed mark, on the frame shown',
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
      label: 'Reject the proposed mark',
      keys: ['j'],
      kind: 'undoable',
      enabled: () => lookedAt(session) !== null,
      run: () => {
        const proposal = lookedAt(session);
        if (proposal) reject(session, proposal);
      },
    },
    {
      id: 'proposals-accept',
      label: 'Accept all proposed marks',
      keys: ['Shift+K'],
      kind: 'undoable',
      enabled: () => sureProposals(document.swim()).length > 0,
      run: () => acceptAll(session),
    },
    {
      id: 'proposals-reject',
      label: 'Reject all proposed marks',
      keys: ['Shift+J'],
      kind: 'undoable',
      enabled: () => proposalsOf(document.swim()).length > 0,
      run: () => rejectAll(session),
    },
  ];
}
