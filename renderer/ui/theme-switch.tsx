import { useId } from 'react';
import { useStore } from 'zustand';
import { chooseTheme, type Theme, themeStore, themes } from './theme';

export const themeWords: Readonly<Record<Theme, string>> = { dim: 'Dim', light: 'Light', glare: 'Glare' };

/** Three looks: a dark room, an office, a bright pool deck. */
export function ThemeSwitch() {
  const theme = useStore(themeStore, (state) => state.theme);
  const name = useId();
  return (
    <fieldset className="theme-switch">
      <legend className="unseen">Look</legend>
      {themes.map((each) => (
        <label key={each}>
          <input type="radio" name={name} checked={theme === each} onChange={() => chooseTheme(each)} />
          {themeWords[each]}
        </label>
      ))}
    </fieldset>
  );
}
