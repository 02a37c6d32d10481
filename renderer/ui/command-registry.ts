import { createStore } from 'zustand/vanilla';
import type { Command } from './command';

/** The commands of one part of the screen, under the name the coach knows it by. */
export interface CommandGroup {
  readonly heading: string;
  readonly commands: readonly Command[];
}

/** Every command that can be given just now; the keyboard sheet shows these and no others. */
export const commandRegistry = createStore<{ readonly groups: readonly CommandGroup[] }>(() => ({
  groups: [],
}));

/** Adds a group; the answer takes it away again. */
export function registerCommands(group: CommandGroup): () => void {
  commandRegistry.setState(({ groups }) => ({ groups: [...groups, group] }));
  return () =>
    commandRegistry.setState(({ groups }) => ({ groups: groups.filter((each) => each !== group) }));
}
