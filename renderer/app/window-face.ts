import type { WindowFace } from '#core/host-contract/operations/window-operations';
import type { Command } from '../ui/command';
import { commandRegistry } from '../ui/command-registry';
import { themeStore } from '../ui/theme';
import { workInHand } from '../ui/work-in-hand';

/** Rounded, so that the window is not told of every thousandth of the work. */
const inPercent = (share: number | null): number | null =>
  share === null ? null : Math.round(Math.min(1, Math.max(0, share)) * 100) / 100;

/** An open dialog has the coach's answer to wait for: until then no command is given, by key or menu. */
const dialogIsOpen = (): boolean => document.querySelector('dialog[open]') !== null;

export const canRun = (command: Command): boolean => !dialogIsOpen() && (command.enabled?.() ?? true);

/** What the page is just now, for those parts of its window that no page can draw. */
export function windowFace(): WindowFace {
  return {
    look: { dark: themeStore.getState().theme === 'dim', ground: groundColour() },
    groups: commandRegistry.getState().groups.map(({ heading, commands }) => ({
      heading,
      commands: commands
        // what is read elsewhere than by a command, as the grid's arrows are, is for the key sheet alone
        .filter(({ told }) => told === undefined)
        .map((command) => ({
          id: command.id,
          label: command.label,
          key: command.keys[0] ?? null,
          enabled: canRun(command),
        })),
    })),
    work: [...workInHand.getState().work.values()].map(inPercent),
  };
}

/** The colour behind everything, as `#rrggbb`. */
function groundColour(): string {
  const parts = /^rgba?\((\d+), (\d+), (\d+)/.exec(getComputedStyle(document.body).backgroundColor);
  if (!parts) return '#000000';
  return `#${parts
    .slice(1, 4)
    .map((each) => Number(each).toString(16).padStart(2, '0'))
    .join('')}`;
}
