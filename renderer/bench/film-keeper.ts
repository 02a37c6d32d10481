import type { OpenFrameSource } from '../video/frame-source';
import type { BenchSession, FilmKeeper } from './bench-session';
import { makeCopy } from './make-copy';
import { openFilm } from './open-film';

/** Our default: how often a file that has gone is looked for again. */
const lookAgainMs = 2000;

/** Keeps the film of an open swim in step with its file: opened, copied, gone, back again. */
export function createFilmKeeper(
  sessionOf: () => BenchSession,
  open: OpenFrameSource,
  signal: AbortSignal,
): FilmKeeper {
  let looking = false;
  const pause = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, lookAgainMs));

  const letGo = (): void => {
    const { film } = sessionOf();
    film.getState().source?.close();
    film.setState({ source: null, reopen: null });
  };

  /** Waits until the clip is the one the marks were made on again; false when the bench was left or it was linked anew. */
  const waitForClip = async (): Promise<boolean> => {
    const session = sessionOf();
    const { id } = session.document.swim();
    for (;;) {
      const read = await session.host.call('swim/read', { id });
      if (signal.aborted) return false;
      // a library that is not to be reached either says nothing of the clip: its disk is taken as gone
      const status = read.ok ? read.value.clipStatus : 'missing';
      if (status === 'present') return true;
      session.view.setState({ playing: false });
      if (session.film.getState().trouble?.kind !== status) {
        letGo();
        session.film.setState({ trouble: { kind: status, waiting: true } });
      }
      await pause();
      if (signal.aborted) return false;
    }
  };

  return {
    open: (clipStatus) => openFilm(sessionOf(), clipStatus, open, signal),
    makeCopy: (why) => makeCopy(sessionOf(), open, why, signal),
    async unreadable() {
      if (looking) return;
      looking = true;
      try {
        const session = sessionOf();
        if (!(await waitForClip())) return;
        const wasGone = session.film.getState().trouble !== null;
        letGo();
        await openFilm(session, 'present', open, signal);
        if (wasGone && !signal.aborted && session.film.getState().source) session.say('The clip is back');
      } finally {
        looking = false;
      }
    },
  };
}
