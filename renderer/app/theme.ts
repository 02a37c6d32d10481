export const themes = ['dim', 'light', 'glare'] as const;
export type Theme = (typeof themes)[number];

const storageKey = 'submark.theme';
const isTheme = (value: string | null): value is Theme => themes.some((each) => each === value);

/** The coach's choice; without one, glare for those who ask their system for more contrast, else dim. */
export function storedTheme(): Theme {
  const stored = window.localStorage.getItem(storageKey);
  if (isTheme(stored)) return stored;
  return window.matchMedia('(prefers-contrast: more)').matches ? 'glare' : 'dim';
}

export function applyStoredTheme(): void {
  document.documentElement.dataset['theme'] = storedTheme();
}

export function chooseTheme(theme: Theme): void {
  window.localStorage.setItem(storageKey, theme);
  document.documentElement.dataset['theme'] = theme;
}
