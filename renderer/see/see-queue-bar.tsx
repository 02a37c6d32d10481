import { useStore } from 'zustand';
import { seeWords } from '#core/words/see';
import { emptyQueue } from './see-queue';
import { windowSeeQueue } from './window-see-queue';

/** What is being seen on the shelf, and how to stop it; there while any swim waits. */
export function SeeQueueBar() {
  const waiting = useStore(windowSeeQueue, (state) => state.waiting.length);
  const share = useStore(windowSeeQueue, (state) => state.now?.share ?? 0);
  if (waiting === 0) return null;
  return (
    <section className="choose-bar see-queue" aria-label={seeWords('queue')}>
      <output>{seeWords('queueLeft', { waiting })}</output>
      <progress max={1} value={share} aria-label={seeWords('queueNow')} />
      <button type="button" className="quiet" onClick={() => emptyQueue(windowSeeQueue)}>
        {seeWords('queueStop')}
      </button>
    </section>
  );
}
