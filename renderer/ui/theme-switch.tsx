import { useId } from 'react';
import { useStore } from 'zustand';
import { chooseTheme, type Theme, themeStore, themes } from './theme';
import { uiWords } from '#core/words/ui';

export const themeWords: Readonly<Record<Theme, string>> = {
  dim: uiWords('dim'),
  light: uiWords('light'),
  glare: uiWords('glare'),
};

/** Three looks: a dark room, an office, a bright pool deck. */
export function ThemeSwitch() {
  const theme = useStore(themeStore, (state) => state.theme);
  const name = useId();
  return (
    <fieldset className="theme-switch">
      <legend className="unseen">{uiWords('look')}</legend>
      {themes.map((each) => (
        <label key={each}>
          <input type="radio" name={name} checked={theme === each} onChange={() => chooseTheme(each)} />
          {themeWords[each]}
        </label>
      ))}
    </fieldset>
  );
}
