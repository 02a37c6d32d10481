import { useCallback, useRef, useState } from 'react';
import { ErrorBoundary } from 'react-error-boundary';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import { catalogue } from '#core/measures/families';
import { type BenchParts, OpenedBench } from '../bench/opened-bench';
import type { HostClient } from '../host/host-client';
import { rhythmOf } from '../score/rhythm-of';
import { Shelf } from '../shelf/shelf';
import { openFrameSource } from '../video/open-frame-source';
import { Broken } from './broken';
import { useRoute } from './use-route';
import './app.css';

const parts: BenchParts = {
  openFrameSource,
  catalogue,
  derive: (swim, swimmer) => {
    const context = readingContext(swim, { swimmer, markingError: null });
    return { readings: computeReadings(context), rhythm: rhythmOf(context.events) };
  },
};

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
        <OpenedBench swimId={route.swimId} host={host} onLeave={toShelf} say={say} parts={parts} />
      ) : (
        <Shelf host={host} onOpen={toBench} say={say} />
      )}
      <div className="said" role="status" aria-live="polite">
        {said}
      </div>
    </ErrorBoundary>
  );
}
