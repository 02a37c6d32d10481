import { useCallback, useMemo, useState } from 'react';
import { ErrorBoundary } from 'react-error-boundary';
import { useStore } from 'zustand';
import { BenchScreen } from '../bench/bench-screen';
import type { HostClient } from '../host/host-client';
import { Shelf } from '../shelf/shelf';
import { createShelfMemory } from '../shelf/shelf-memory';
import { Broken } from './broken';
import type { Command } from './command';
import { KeySheet } from './key-sheet';
import { keySheet } from './key-sheet-button';
import { NoticeBar } from './notice-bar';
import { createNotices } from './notices';
import { chooseTheme, nextTheme } from './theme';
import { themeWords } from './theme-switch';
import { useCommandKeys } from './use-command-keys';
import { useRoute } from './use-route';
import './app.css';

/** The frame around the screens: where the coach is, what was just said, every key, and a net for bugs. */
export function App({ host }: { readonly host: HostClient }) {
  const [route, go] = useRoute();
  const [notices] = useState(createNotices);
  const [memory] = useState(createShelfMemory);
  const sheet = useStore(keySheet, (state) => state.open);
  const toShelf = useCallback(() => go({ screen: 'shelf' }), [go]);
  const toBench = useCallback(
    (swimId: string) => {
      memory.setState({ swimId });
      go({ screen: 'bench', swimId });
    },
    [go, memory],
  );
  const commands = useMemo(
    (): readonly Command[] => [
      {
        id: 'keys',
        label: 'Keys and look',
        keys: ['?', 'Shift+?'],
        kind: 'view',
        run: () => keySheet.setState({ open: true }),
      },
      {
        id: 'next-look',
        label: 'Next look: dim, light, glare',
        keys: ['Shift+L'],
        kind: 'view',
        run: () => {
          const theme = nextTheme();
          chooseTheme(theme);
          notices.say(`Look: ${themeWords[theme].toLowerCase()}`);
        },
      },
    ],
    [notices],
  );
  useCommandKeys('Everywhere', commands);
  return (
    <>
      <ErrorBoundary
        resetKeys={[route.screen, route.screen === 'bench' ? route.swimId : '']}
        fallbackRender={({ error, resetErrorBoundary }) => (
          <Broken
            error={error}
            onAgain={resetErrorBoundary}
            onShelf={route.screen === 'shelf' ? null : toShelf}
          />
        )}
      >
        {route.screen === 'bench' ? (
          <BenchScreen swimId={route.swimId} host={host} onLeave={toShelf} say={notices.say} />
        ) : (
          <Shelf host={host} memory={memory} onOpen={toBench} say={notices.say} />
        )}
      </ErrorBoundary>
      <NoticeBar notices={notices} />
      {sheet && <KeySheet onClose={() => keySheet.setState({ open: false })} />}
    </>
  );
}
