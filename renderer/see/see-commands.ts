import type { Command } from '../ui/command';
import type { OpenSwim } from '../open-swim/open-swim';
import { cancelSeeing, seeSwimmer } from './see-actions';
import { seeStoreOf } from '../open-swim/see-store';
import { seeWords } from '#core/words/see';

/** Seeing the swimmer, by key. */
export function seeCommands(session: OpenSwim): readonly Command[] {
  return [
    {
      id: 'see',
      label: seeWords('seeSwimmerEvery'),
      keys: ['Shift+S'],
      kind: 'undoable',
      run: () => seeSwimmer(session),
    },
    {
      id: 'see-cancel',
      label: seeWords('cancelSeeing'),
      keys: ['Escape'],
      kind: 'never',
      enabled: () => seeStoreOf(session).getState().running !== null,
      run: () => cancelSeeing(session),
    },
  ];
}
