import { useBench, useSwim } from '../bench/bench-session';
import { setSlowdown } from '../state/card-commands';

/** Every time on the bench hangs on how the film was shot: while that is only assumed, it is asked here. */
export function SlowdownNotice({ onAsk }: { readonly onAsk: () => void }) {
  const { document } = useBench();
  const slowdown = useSwim((swim) => swim.clip.slowdown);
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
