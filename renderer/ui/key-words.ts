import { uiWords } from '#core/words/ui';

const names: Readonly<Record<string, string>> = {
  ArrowLeft: '←',
  ArrowRight: '→',
  ArrowUp: '↑',
  ArrowDown: '↓',
  Escape: uiWords('esc'),
  Delete: 'Delete',
  Backspace: 'Backspace',
  ' ': 'Space',
};

/** A tinykeys pattern as it is printed on a key cap: "$mod+Shift+z" is "Ctrl Shift Z" (⌘ on a Mac). */
export function keyWords(pattern: string, mac: boolean): string {
  // a plus at the end is the plus key itself, not a joint
  const parts = pattern.endsWith('++') ? [...pattern.slice(0, -2).split('+'), '+'] : pattern.split('+');
  const caps = pattern === '+' ? ['+'] : parts;
  return caps
    .map((cap) => {
      if (cap === '$mod') return mac ? '⌘' : uiWords('ctrl');
      return names[cap] ?? /^Digit(\d)$/.exec(cap)?.[1] ?? (cap.length === 1 ? cap.toUpperCase() : cap);
    })
    .join(' ')
    .replace(/^Shift \?$/, '?');
}

/** The same as short as it fits on a cap: "Shift S" is "⇧S". */
export const capWords = (pattern: string, mac: boolean): string =>
  keyWords(pattern, mac)
    .replace(/^Shift /, '⇧')
    .replace(/^Backspace$/, '⌫')
    .replace(/^Enter$/, '↵');

/** Whether keys are to be told as on a Mac. */
export const onMac = /Mac|iPhone|iPad/.test(globalThis.navigator?.platform ?? '');
