import { createStore } from 'zustand/vanilla';
import { windowMemory } from '../host/window-memory';

export const themes = ['dim', 'light', 'glare'] as const;
export type Theme = (typeof themes)[number];

const storageKey = 'submark.theme';
/** What was shown last in this window, for the moment before the host has said what is chosen. */
const shownKey = 'submark.theme-shown';
const isTheme = (value: string | null): value is Theme => themes.some((each) => each === value);

/** The coach's choice; without one, glare for those who ask their system for more contrast, else dim. */
function themeFor(stored: string | null, moreContrast: boolean): Theme {
  if (isTheme(stored)) return stored;
  return moreContrast ? 'glare' : 'dim';
}

const contrastWish = window.matchMedia('(prefers-contrast: more)');
const current = (): Theme =>
  themeFor(windowMemory.getItem(storageKey) ?? window.localStorage.getItem(shownKey), contrastWish.matches);

export const themeStore = createStore<{ readonly theme: Theme }>(() => ({ theme: current() }));

function show(): void {
  const theme = current();
  document.documentElement.dataset.theme = theme;
  themeStore.setState({ theme });
  const chosen = windowMemory.getItem(storageKey);
  if (chosen !== null) window.localStorage.setItem(shownKey, chosen);
}

/** Shows the theme, and follows the system's setting for contrast while the coach hasn't chosen one. */
export function startTheme(): void {
  show();
  contrastWish.addEventListener('change', show);
  void windowMemory.ready.then(show);
}

export function chooseTheme(theme: Theme): void {
  windowMemory.setItem(storageKey, theme);
  show();
}

export function nextTheme(): Theme {
  const at = themes.indexOf(themeStore.getState().theme);
  return themes[(at + 1) % themes.length] ?? 'dim';
}
