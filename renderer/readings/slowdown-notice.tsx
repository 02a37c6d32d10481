import { useStore } from 'zustand';
import { kickDoubt } from '#core/measures/kick-doubt';
import { useOpenSwim, useSwim } from '../open-swim/open-swim';
import { setSlowdown } from '../open-swim/card-commands';
import type { ReadingsState } from '../open-swim/readings-store';
import { kickDoubtWords, slowdownWords } from '#core/measures/kick-doubt-words';
import { readingsWords } from '#core/words/readings';

/**
 * Every time on the bench hangs on how the film was shot. While that is only assumed it is asked here, and whoever said
 * so, a kick no human makes is pointed out.
 */
export function SlowdownNotice({ onAsk }: { readonly onAsk: () => void }) {
  const { document, readings } = useOpenSwim();
  const slowdown = useSwim((swim) => swim.clip.slowdown);
  const hz = useStore(readings.store, kickHz);
  const doubt = hz === null ? null : kickDoubt(hz, slowdown.factor);
  if (doubt)
    return (
      <div className="slowdown-notice" role="alert">
        <p>
          <strong>{readingsWords('theseTimesCant')}</strong> {kickDoubtWords(doubt)}
        </p>
        {doubt.better && (
          <button
            type="button"
            onClick={() => doubt.better && document.run(setSlowdown(doubt.better.slowdown))}
          >
            {doubt.better.slowdown === 1 ? readingsWords('trueSpeed') : slowdownWords(doubt.better.slowdown)}
          </button>
        )}
        <button type="button" onClick={onAsk}>
          {readingsWords('slowMotion')}
        </button>
      </div>
    );
  if (slowdown.source !== 'assumed') return null;
  return (
    <div className="slowdown-notice">
      <p>{readingsWords('takenFilmedAt')}</p>
      <button type="button" onClick={() => document.run(setSlowdown(slowdown.factor))}>
        {readingsWords('trueSpeed')}
      </button>
      <button type="button" onClick={onAsk}>
        {readingsWords('slowMotion')}
      </button>
    </div>
  );
}

/** The kick frequency the bench reads now, in Hz; null while there is none. */
export function kickHz({ readings }: Pick<ReadingsState, 'readings'>): number | null {
  const reading = readings.find(({ id }) => id === 'kick-frequency');
  return reading?.status === 'computed' ? reading.value : null;
}
