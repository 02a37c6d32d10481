import { useCallback, useMemo, useState } from 'react';
import { ErrorBoundary } from 'react-error-boundary';
import { useStore } from 'zustand';
import type { HostClient } from '../host/host-client';
import { createShelfMemory } from '../shelf/shelf-memory';
import { Broken } from './broken';
import type { Command } from '../ui/command';
import { KeySheet } from '../ui/key-sheet';
import { keySheet } from '../ui/key-sheet-button';
import { NoticeBar } from '../ui/notice-bar';
import { createNotices } from '../ui/notices';
import { NoSuchScreen } from './no-such-screen';
import { screenList } from '../ui/screen-list';
import { useSeeQueue } from '../see/use-see-queue';
import { showRoute } from './screens';
import { chooseTheme, nextTheme } from '../ui/theme';
import { themeWords } from '../ui/theme-switch';
import { useCommandKeys } from '../ui/use-command-keys';
import { addressOf, shelfRoute, useRoute } from '../ui/use-route';
import './app.css';
import { appWords } from '#core/words/app';

/** Where film is stepped through: nothing else decodes meanwhile. */
const filmScreens: ReadonlySet<string> = new Set(['bench', 'pair', 'handout']);

/** The frame around the screens: where the coach is, what was just said, every key, and a net for bugs. */
export function App({ host }: { readonly host: HostClient }) {
  const [route, go] = useRoute();
  const [notices] = useState(createNotices);
  const [memory] = useState(createShelfMemory);
  const sheet = useStore(keySheet, (state) => state.open);
  const toShelf = useCallback(() => go(shelfRoute), [go]);
  const content = useMemo(
    () => showRoute(route, { host, say: notices.say, go, memory }),
    [route, host, notices, go, memory],
  );
  const commands = useMemo(
    (): readonly Command[] => [
      {
        id: 'keys',
        label: appWords('keysLook'),
        keys: ['?', 'Shift+?'],
        kind: 'view',
        run: () => keySheet.setState({ open: true }),
      },
      {
        id: 'next-look',
        label: appWords('nextLookDimLight'),
        keys: ['Shift+L'],
        kind: 'view',
        run: () => {
          const theme = nextTheme();
          chooseTheme(theme);
          notices.say(appWords('look', { theme: themeWords[theme].toLowerCase() }));
        },
      },
      ...screenList.flatMap(({ name, label, menuKey }): Command[] =>
        menuKey === null
          ? []
          : [
              {
                id: `go-${name}`,
                label: appWords('go', { label: label.toLowerCase() }),
                keys: [menuKey],
                kind: 'view',
                run: () => go({ screen: name, ids: [] }),
              },
            ],
      ),
    ],
    [notices, go],
  );
  useCommandKeys(appWords('everywhere'), commands);
  useSeeQueue(host, !filmScreens.has(route.screen));
  return (
    <>
      <ErrorBoundary
        resetKeys={[addressOf(route)]}
        fallbackRender={({ error, resetErrorBoundary }) => (
          <Broken
            error={error}
            screen={route.screen}
            onAgain={resetErrorBoundary}
            onShelf={route.screen === 'shelf' ? null : toShelf}
          />
        )}
      >
        {content ?? <NoSuchScreen onShelf={toShelf} />}
      </ErrorBoundary>
      <NoticeBar notices={notices} />
      {sheet && <KeySheet onClose={() => keySheet.setState({ open: false })} />}
    </>
  );
}
