import type { Command } from '../app/command';
import type { BenchSession } from '../bench/bench-session';
import { cancelSeeing, seeSwimmer } from './see-actions';
import { seeStoreOf } from './see-store';

/** Seeing the swimmer, by key. */
export function seeCommands(session: BenchSession): readonly Command[] {
  return [
    {
      id: 'see',
      label: 'See the swimmer on every picture',
      keys: ['Shift+S'],
      kind: 'undoable',
      run: () => seeSwimmer(session),
    },
    {
      id: 'see-cancel',
      label: 'Cancel seeing',
      keys: ['Escape'],
      kind: 'never',
      enabled: () => seeStoreOf(session).getState().running !== null,
      run: () => cancelSeeing(session),
    },
  ];
}
