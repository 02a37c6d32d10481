import type { Command } from '../ui/command';
import type { OpenSwim } from '../open-swim/open-swim';
import { askedPoint, askNext, cancelFollowing, followPoints, keepAsked, layNextLine } from './follow-actions';
import { linesWanted, questionsOf } from '../open-swim/follow-selectors';
import { followWords } from '#core/words/follow';
import { reviewCommands } from './review-commands';

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
      id: 'follow-right',
      label: followWords('pointAskedRight'),
      keys: ['k'],
      kind: 'undoable',
      enabled: () => askedPoint(session) !== null,
      run: () => keepAsked(session),
    },
    ...reviewCommands(session),
  ];
}
