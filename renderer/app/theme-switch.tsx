import { useState } from 'react';
import { chooseTheme, storedTheme, type Theme, themes } from './theme';

const words: Readonly<Record<Theme, string>> = { dim: 'Dim', light: 'Light', glare: 'Glare' };

/** Three looks: a dark room, an office, a bright pool deck. */
export function ThemeSwitch() {
  const [theme, setTheme] = useState(storedTheme);
  return (
    <fieldset className="theme-switch">
      <legend className="unseen">Look</legend>
      {themes.map((each) => (
        <label key={each}>
          <input
            type="radio"
            name="theme"
            checked={theme === each}
            onChange={() => {
              chooseTheme(each);
              setTheme(each);
            }}
          />
          {words[each]}
        </label>
      ))}
    </fieldset>
  );
}
