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

/** Waits for a box of the system by its title; gives its window's id. */
export async function boxTitled(title: RegExp): Promise<string> {
  const found = (): string => windows().find((each) => title.test(each.title))?.id ?? '';
  await expect.poll(found, { message: `a window titled ${title}` }).not.toBe('');
  return found();
}

/** Brings a window to the front, with the keyboard's focus. */
export function bringForward(window: string): void {
  execFileSync('xdotool', ['windowactivate', '--sync', String(Number(window))]);
}

/** Presses a key in a window of the system, as somebody at the keyboard does. */
export function pressIn(window: string, key: string): void {
  execFileSync('xdotool', ['windowactivate', '--sync', String(Number(window)), 'key', key]);
}
