import { createStore } from 'zustand/vanilla';
import { swimmerHeight } from '#core/drawing/swimmer-size';
import { keepInViewWords } from '#core/words/keep-in-view';
import { windowMemory } from '../host/window-memory';
import type { OpenSwim } from './open-swim';

const storageKey = 'submark.keep-in-view';
const read = (): boolean => windowMemory.getItem(storageKey) === 'yes';

/** Whether the picture comes close to the swimmer and moves along; one choice for bench, pair and what is exported. */
export const keepInViewStore = createStore<{ readonly keep: boolean }>(() => ({ keep: read() }));
void windowMemory.ready.then(() => keepInViewStore.setState({ keep: read() }));

function chooseKeepInView(keep: boolean): void {
  if (keep) windowMemory.setItem(storageKey, 'yes');
  else windowMemory.removeItem(storageKey);
  keepInViewStore.setState({ keep });
}

/**
 * What key and button do: keep the swimmer in view, or no longer. Where the coach zoomed or moved the picture meanwhile, it
 * goes back to the swimmer first.
 */
export function pressKeepInView(swims: readonly OpenSwim[]): void {
  const { keep } = keepInViewStore.getState();
  const taken = swims.some(({ view }) => view.getState().stage !== null);
  for (const { view } of swims) view.setState({ stage: null });
  if (keep && taken) return;
  chooseKeepInView(!keep);
  const unknown = swims.every(({ document }) => swimmerHeight(document.swim()) === null);
  if (!keep && unknown) swims[0]?.say(keepInViewWords('unknown'));
}
