import { uiWords } from '#core/words/ui';

export interface ListedScreen {
  /** First part of its address, `#/name/…`. */
  readonly name: string;
  /** As in the menu and in "Go to …"; sentence case. */
  readonly label: string;
  /** Listed in the menu, with the key that leads there from any screen; null: reached from another screen only. */
  readonly menuKey: string | null;
}

/** Every screen, in the order of the menu. What each shows is in `screens.tsx`; apart, so that bars can list them. */
export const screenList = [
  { name: 'shelf', label: uiWords('shelf'), menuKey: 'Shift+Digit1' },
  { name: 'bench', label: uiWords('bench'), menuKey: null },
  { name: 'handout', label: uiWords('handout'), menuKey: null },
  { name: 'pair', label: uiWords('pair'), menuKey: 'Shift+Digit2' },
  { name: 'trials', label: uiWords('trials'), menuKey: 'Shift+Digit3' },
  { name: 'sets', label: uiWords('sets'), menuKey: 'Shift+Digit4' },
  { name: 'season', label: uiWords('season'), menuKey: 'Shift+Digit5' },
  { name: 'library', label: uiWords('library'), menuKey: 'Shift+Digit6' },
] as const satisfies readonly ListedScreen[];

export type ScreenName = (typeof screenList)[number]['name'];
