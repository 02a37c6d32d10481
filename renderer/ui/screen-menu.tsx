import { type ListedScreen, screenList } from './screen-list';
import { useTip } from './use-tip';
import { addressOf, useRoute } from './use-route';
import { uiWords } from '#core/words/ui';

/** The ways to the other screens, for a screen's bar. Not shown while there is only one. */
export function ScreenMenu() {
  const tip = useTip();
  const [route] = useRoute();
  const listed = (screenList as readonly ListedScreen[]).filter(({ menuKey }) => menuKey !== null);
  if (listed.length < 2) return null;
  return (
    <nav className="screen-menu" aria-label={uiWords('screens')}>
      {listed.map(({ name, label }) => (
        <a
          key={name}
          href={addressOf({ screen: name, ids: [] })}
          aria-current={route.screen === name ? 'page' : undefined}
          title={tip(`go-${name}`, label)}
        >
          {label}
        </a>
      ))}
    </nav>
  );
}
