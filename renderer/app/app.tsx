import { useCallback, useRef, useState } from 'react';
import { ErrorBoundary } from 'react-error-boundary';
import { BenchScreen } from '../bench/bench-screen';
import type { HostClient } from '../host/host-client';
import { Shelf } from '../shelf/shelf';
import { Broken } from './broken';
import { useRoute } from './use-route';
import './app.css';

/** The frame around the screens: where the coach is, what was just said, and a net for bugs. */
export function App({ host }: { readonly host: HostClient }) {
  const [route, go] = useRoute();
  const [said, setSaid] = useState('');
  const fading = useRef<number | undefined>(undefined);
  const say = useCallback((words: string) => {
    window.clearTimeout(fading.current);
    setSaid(words);
    fading.current = window.setTimeout(() => setSaid(''), 6000);
  }, []);
  const toShelf = useCallback(() => go({ screen: 'shelf' }), [go]);
  const toBench = useCallback((swimId: string) => go({ screen: 'bench', swimId }), [go]);
  return (
    <ErrorBoundary FallbackComponent={Broken}>
      {route.screen === 'bench' ? (
        <BenchScreen swimId={route.swimId} host={host} onLeave={toShelf} say={say} />
      ) : (
        <Shelf host={host} onOpen={toBench} say={say} />
      )}
      <div className="said" role="status" aria-live="polite">
        {said}
      </div>
    </ErrorBoundary>
  );
}
