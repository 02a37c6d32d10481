import { useCallback } from 'react';
import { useStore } from 'zustand';
import type { Command } from './command';
import { type CommandGroup, commandRegistry } from './command-registry';
import { capWords, keyWords, onMac } from './key-words';

type Keyed = Pick<Command, 'keys' | 'told'>;

/** The first key of a command in words; empty when it has none. */
const firstKey = ({ keys, told = keys }: Keyed, write = keyWords): string => {
  const [first] = told;
  return first === undefined ? '' : write(first, onMac);
};

/** Words with the first key of the command behind them: "Next mark (↓)". */
export function withKey(words: string, command: Keyed): string {
  const key = firstKey(command);
  return key === '' ? words : `${words} (${key})`;
}

/** The command of that name that can be given on this screen. */
export const commandNamed = (groups: readonly CommandGroup[], id: string): Command | null =>
  groups.flatMap(({ commands }) => commands).find((command) => command.id === id) ?? null;

/**
 * Tooltips that tell the key as the keyboard sheet does: of the command by that name. Without such a command on the
 * screen the words stand alone.
 */
export function useTip(): (id: string, words: string) => string {
  const groups = useStore(commandRegistry, (state) => state.groups);
  return useCallback(
    (id, words) => {
      const command = commandNamed(groups, id);
      return command ? withKey(words, command) : words;
    },
    [groups],
  );
}

/** The keys alone, for a key cap on a button. */
export function useKeyOf(): (id: string) => string {
  const groups = useStore(commandRegistry, (state) => state.groups);
  return useCallback(
    (id) => {
      const command = commandNamed(groups, id);
      return command ? firstKey(command, capWords) : '';
    },
    [groups],
  );
}
