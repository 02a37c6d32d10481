import { useEffect } from 'react';
import { createKeybindingsHandler } from 'tinykeys';
import type { Command } from './command';
import { registerCommands } from './command-registry';

/** Fields that nothing is typed into. */
const keepsKeys: ReadonlySet<string> = new Set(['range', 'checkbox']);

const typing = (target: EventTarget | null): boolean =>
  // an open dialog keeps every key, wherever the focus went
  document.querySelector('dialog[open]') !== null ||
  (target instanceof HTMLElement &&
    (target.isContentEditable ||
      (target instanceof HTMLInputElement && !keepsKeys.has(target.type)) ||
      target.closest('textarea, select, [role="dialog"]') !== null));

/** Keys a focused control answers itself; they must not also run a command. */
const controlKeys = new Set(['Enter', ' ']);

const answersItself = (event: KeyboardEvent): boolean =>
  controlKeys.has(event.key) &&
  event.target instanceof Element &&
  event.target.closest('button, a, [role="button"]') !== null;

/**
 * While mounted: the commands are on the keyboard sheet under `heading`, and a key runs the first enabled command
 * that has it, unless the coach is typing.
 */
export function useCommandKeys(heading: string, commands: readonly Command[]): void {
  useEffect(() => registerCommands({ heading, commands }), [heading, commands]);
  useEffect(() => {
    const byKey = new Map<string, Command[]>();
    for (const command of commands)
      for (const key of command.keys) byKey.set(key, [...(byKey.get(key) ?? []), command]);
    const bindings = Object.fromEntries(
      [...byKey].map(([key, sharing]) => [
        key,
        (event: KeyboardEvent): void => {
          if (event.defaultPrevented || typing(event.target) || answersItself(event)) return;
          const command = sharing.find((each) => each.enabled?.() ?? true);
          if (!command) return;
          event.preventDefault();
          void command.run(event.repeat);
        },
      ]),
    );
    const handler = createKeybindingsHandler(bindings);
    window.addEventListener('keydown', handler);
    return () => window.removeEventListener('keydown', handler);
  }, [commands]);
}
