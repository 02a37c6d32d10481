import type { MenuItemConstructorOptions } from 'electron';
import type { WindowFace } from '#core/host-contract/operations/window-operations';
import { appWords } from '#core/words/app';
import { shellWords } from '#core/words/shell';

type Item = MenuItemConstructorOptions;
type Group = WindowFace['groups'][number];
type Shown = Group['commands'][number];

const separator: Item = { type: 'separator' };

/** The group of the page's commands that are there on every screen, as the key sheet names it. */
const everywhere = appWords('everywhere');

/**
 * The window's menu: the system's own items with its own keys, and the page's commands, which run in the page as their
 * buttons and keys do. Nothing that would load another page, reload this one or open developer tools.
 */
export function menuItems(groups: readonly Group[], mac: boolean, run: (id: string) => void): Item[] {
  const item = (command: Shown): Item => ({
    id: command.id,
    label: command.label.replaceAll('&', '&&'),
    enabled: command.enabled,
    ...keyOf(command, mac),
    click: () => run(command.id),
  });
  const common = groups.filter(({ heading }) => heading === everywhere).flatMap(({ commands }) => commands);
  const own = groups.filter(({ heading }) => heading !== everywhere);
  const ofScreen = own.flatMap(({ commands }) => commands);
  const withKey = (key: string): Shown | undefined => ofScreen.find((each) => each.key === key);
  const undo = withKey('$mod+z');
  const redo = withKey('$mod+Shift+z');
  const named = (id: string): Item[] => common.filter((each) => each.id === id).map(item);
  const goes = common.filter(({ id }) => id.startsWith('go-'));
  return [
    ...(mac ? [{ role: 'appMenu' } as Item] : []),
    { label: '&File', submenu: [mac ? { role: 'close' } : { role: 'quit' }] },
    {
      label: '&Edit',
      submenu: [
        // where the page has nothing to undo, what was typed into a field still may be
        undo?.enabled ? item(undo) : { role: 'undo' },
        redo?.enabled ? item(redo) : { role: 'redo' },
        separator,
        ...(['cut', 'copy', 'paste', 'selectAll'] as const).map((role): Item => ({ role })),
      ],
    },
    {
      label: '&View',
      submenu: [
        ...named('next-look'),
        separator,
        ...(['resetZoom', 'zoomIn', 'zoomOut'] as const).map((role): Item => ({ role })),
        separator,
        { role: 'togglefullscreen' },
      ],
    },
    ...(goes.length > 0 ? [{ label: '&Go', submenu: goes.map(item) }] : []),
    // several parts of a screen may name their commands alike
    ...[...new Set(own.map(({ heading }) => heading))].map(
      (heading): Item => ({
        label: heading.replaceAll('&', '&&'),
        submenu: own
          .filter((group) => group.heading === heading)
          .flatMap(({ commands }) => commands)
          .map(item),
      }),
    ),
    mac ? { role: 'windowMenu' } : { label: '&Window', submenu: [{ role: 'minimize' }, { role: 'close' }] },
    { role: 'help', submenu: [...named('keys'), ...(mac ? [] : [{ role: 'about' } as Item])] },
  ];
}

/**
 * The key beside an item. The page reads its own keys, so they are shown and not taken. On macOS a key that is shown is
 * taken: only those with ⌘ are, which come to the menu when the page left them; the others are told in a tip.
 */
function keyOf({ key }: Shown, mac: boolean): Item {
  const accelerator = key === null ? null : acceleratorOf(key);
  if (accelerator === null) return {};
  if (!mac) return { accelerator, registerAccelerator: false };
  return accelerator.includes('CommandOrControl')
    ? { accelerator }
    : { toolTip: shellWords('key', { accelerator }) };
}

const keyNames: Readonly<Record<string, string>> = {
  $mod: 'CommandOrControl',
  ArrowLeft: 'Left',
  ArrowRight: 'Right',
  ArrowUp: 'Up',
  ArrowDown: 'Down',
  Escape: 'Esc',
  Backspace: 'Backspace',
  Delete: 'Delete',
  Enter: 'Enter',
  Home: 'Home',
  End: 'End',
  PageUp: 'PageUp',
  PageDown: 'PageDown',
  Shift: 'Shift',
  Alt: 'Alt',
  Control: 'Control',
  ' ': 'Space',
};

/** A tinykeys pattern as Electron names keys; null for one it has no name for. */
export function acceleratorOf(pattern: string): string | null {
  const parts = pattern === '+' ? ['+'] : pattern.replace(/\+\+$/, '+Plus').split('+');
  const named = parts.map((part) => {
    if (part === '+' || part === 'Plus') return 'Plus';
    const digit = /^Digit(\d)$/.exec(part)?.[1];
    return digit ?? keyNames[part] ?? (/^[!-~]$/.test(part) ? part.toUpperCase() : null);
  });
  return named.includes(null) ? null : named.join('+');
}
