import { execFileSync } from 'node:child_process';
import { expect } from '@playwright/test';

/** Windows of the screen: id and title. */
function windows(): { id: string; title: string }[] {
  const list = execFileSync('wmctrl', ['-l'], { encoding: 'utf8' });
  return list
    .split('\n')
    .map((line) => /^(0x\w+)\s+\S+\s+\S+ ?(.*)$/.exec(line))
    .flatMap((found) => (found ? [{ id: found[1] ?? '', title: found[2] ?? '' }] : []));
}

/** Whether a box of the system is there now. */
export const isThere = (title: RegExp): boolean => windows().some((each) => title.test(each.title));

/** Waits for a box of the system by its title; gives its window's id. */
export async function boxTitled(title: RegExp): Promise<string> {
  const found = (): string => windows().find((each) => title.test(each.title))?.id ?? '';
  await expect.poll(found, { message: `a window titled ${title}` }).not.toBe('');
  return found();
}

/** Clicks in a window of the system, at a place of it in pixels, as somebody with a mouse does. */
export function clickIn(window: string, { x, y }: { readonly x: number; readonly y: number }): void {
  const place = ['--window', String(Number(window)), String(Math.round(x)), String(Math.round(y))];
  execFileSync('xdotool', [
    ...['windowactivate', '--sync', String(Number(window))],
    ...['mousemove', ...place, 'click', '1'],
  ]);
}

/** Presses a key in a window of the system, as somebody at the keyboard does. */
export function pressIn(window: string, key: string): void {
  execFileSync('xdotool', ['windowactivate', '--sync', String(Number(window)), 'key', key]);
}

/** The window that a box of the system stands over, by its id; null where it stands alone. */
export function windowUnder(box: string): number | null {
  const said = execFileSync('xprop', ['-id', box, 'WM_TRANSIENT_FOR'], { encoding: 'utf8' });
  const under = /window id # (0x\w+)/.exec(said)?.[1];
  return under === undefined ? null : Number(under);
}

/** Whether a box of the system keeps the program's other windows waiting. */
export const isModal = (box: string): boolean =>
  execFileSync('xprop', ['-id', box, '_NET_WM_STATE'], { encoding: 'utf8' }).includes('_NET_WM_STATE_MODAL');
