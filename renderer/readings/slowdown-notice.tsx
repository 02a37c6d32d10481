import { useStore } from 'zustand';
import { kickDoubt } from '#core/measures/kick-doubt';
import { useOpenSwim, useSwim } from '../open-swim/open-swim';
import { setSlowdown } from '../open-swim/card-commands';
import type { ReadingsState } from '../open-swim/readings-store';
import { kickDoubtWords, slowdownWords } from '#core/measures/kick-doubt-words';

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
          <strong>These times can’t be right.</strong> {kickDoubtWords(doubt)}
        </p>
        {doubt.better && (
          <button
            type="button"
            onClick={() => doubt.better && document.run(setSlowdown(doubt.better.slowdown))}
          >
            {doubt.better.slowdown === 1 ? 'True speed' : slowdownWords(doubt.better.slowdown)}
          </button>
        )}
        <button type="button" onClick={onAsk}>
          Slow motion…
        </button>
      </div>
    );
  if (slowdown.source !== 'assumed') return null;
  return (
    <div className="slowdown-notice">
      <p>Taken as filmed at true speed. In slow motion, every time here would be wrong.</p>
      <button type="button" onClick={() => document.run(setSlowdown(slowdown.factor))}>
        True speed
      </button>
      <button type="button" onClick={onAsk}>
        Slow motion…
      </button>
    </div>
  );
}

/** The kick frequency the bench reads now, in Hz; null while there is none. */
export function kickHz({ readings }: Pick<ReadingsState, 'readings'>): number | null {
  const reading = readings.find(({ id }) => id === 'kick-frequency');
  return reading?.status === 'computed' ? reading.value : null;
}
