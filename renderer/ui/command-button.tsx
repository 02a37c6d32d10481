import type { ComponentProps } from 'react';
import { useStore } from 'zustand';
import { commandRegistry } from './command-registry';
import { commandNamed, withKey } from './use-tip';

interface Props extends Omit<ComponentProps<'button'>, 'type' | 'onClick' | 'title'> {
  /** The command's name: it must be one of the screen's. */
  readonly command: string;
  /** What the tooltip says; the command's label unless given. */
  readonly tip?: string;
}

/** A button for a command of the screen: the very one its key runs and the keyboard sheet lists. */
export function CommandButton({ command: id, tip, children, ...rest }: Props) {
  const command = useStore(commandRegistry, ({ groups }) => commandNamed(groups, id));
  return (
    <button
      {...rest}
      type="button"
      title={command ? withKey(tip ?? command.label, command) : tip}
      onClick={() => void command?.run()}
    >
      {children}
    </button>
  );
}
