import type { FrameRange } from '#core/timeline/frame-range';
import { createPlayer, type PlayPace, playPaces } from '../video/player';
import { type OpenSwim, clockOf } from './open-swim';
import { openSwimWords } from '#core/words/open-swim';

const paceOf = (pace: number): PlayPace => playPaces.find((each) => each === pace) ?? 1;

/**
 * Plays from the frame on the stage until the end, or a stretch over and over, until told to stop; the number follows
 * the picture shown.
 */
export function startPlayback(session: OpenSwim, loop?: FrameRange): () => void {
  const { view, film, document } = session;
  const { source } = film.getState();
  if (!source) return () => undefined;
  const { table, slowdown } = clockOf(document.swim());
  const player = createPlayer({
    source,
    slowdown,
    onFrame: (picture) => {
      // a picture asked for before the coach stopped may come after: it must not take the frame they went to
      if (view.getState().playing) view.setState({ frame: picture.frame, towards: 1 });
    },
    onStop: (reason) => {
      view.setState({ playing: false });
      if (reason === 'lost') session.say(openSwimWords('nextPictureCant'));
    },
  });
  const { frame, pace } = view.getState();
  player.play(!loop && frame >= table.starts.length - 1 ? 0 : frame, paceOf(pace), loop);
  const unsubscribe = view.subscribe((state, before) => {
    if (state.pace !== before.pace) player.setPace(paceOf(state.pace));
  });
  return () => {
    unsubscribe();
    player.close();
  };
}
