import { clampFrame, frameCount } from '#core/timeline/frame-table';
import { framesWithMarks, nextOf } from './selectors';
import type { ViewState } from './view-store';
import { walkWay } from '../video/walk-way';
import { type OpenSwim, clockOf } from './open-swim';
import { openSwimWords } from '#core/words/open-swim';

/** Asks for a frame; the picture follows as fast as it is decoded. */
export function goTo(session: OpenSwim, frame: number): void {
  const { table } = clockOf(session.document.swim());
  const from = session.view.getState().frame;
  const to = clampFrame(table, frame);
  const patch: Partial<ViewState> = { frame: to, playing: false };
  if (to !== from) Object.assign(patch, { towards: walkWay(from, to) });
  session.view.setState(patch);
}

/**
 * Steps on. While a key or button is `held` the walk waits for its pictures: it goes as fast as the film can be decoded and
 * stops where it is let go, instead of running ahead of what is seen.
 */
export function stepBy(session: OpenSwim, frames: number, held = false): void {
  const { frame, shownFrame } = session.view.getState();
  if (held && shownFrame !== frame && session.film.getState().source) return;
  goTo(session, session.view.getState().frame + frames);
}

export function goToEnd(session: OpenSwim, end: 'first' | 'last'): void {
  const { table } = clockOf(session.document.swim());
  goTo(session, end === 'first' ? 0 : frameCount(table) - 1);
}

/** To the nearest frame with a mark before or after; says so when there is none. */
export function goToMark(session: OpenSwim, way: -1 | 1): void {
  const found = nextOf(framesWithMarks(session.document.swim()), session.view.getState().frame, way);
  if (found === null)
    session.say(way > 0 ? openSwimWords('noMarkAfterFrame') : openSwimWords('noMarkBefore'));
  else goTo(session, found);
}

/** Resolves true once the picture asked for is on the stage, false when it does not come in time. */
export function whenShown(session: OpenSwim, patience = 3000): Promise<boolean> {
  const { view } = session;
  const there = (state: ViewState): boolean => state.shownFrame === state.frame;
  if (there(view.getState())) return Promise.resolve(true);
  return new Promise((resolve) => {
    const end = (shown: boolean): void => {
      clearTimeout(timer);
      unsubscribe();
      resolve(shown);
    };
    const timer = setTimeout(() => end(false), patience);
    const unsubscribe = view.subscribe((state) => {
      if (there(state)) end(true);
    });
  });
}
