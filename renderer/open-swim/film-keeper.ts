import type { FrameSource, OpenFrameSource } from '../video/frame-source';
import { openClipItself } from '../video/open-swim-film';
import type { OpenSwim, FilmKeeper } from './open-swim';
import { makeCopy } from './make-copy';
import { openFilm } from './open-film';
import { watchClip } from './watch-clip';
import { openSwimWords } from '#core/words/open-swim';

/** Our default: how often a file that has gone is looked for again. */
const lookAgainMs = 2000;
/** Room for the few pictures of the clip itself that are looked at closely: five of 4K. */
const ownBudget = 64 * 2 ** 20;

/** Keeps the film of an open swim in step with its file: opened, copied, gone, back again. */
export function createFilmKeeper(
  sessionOf: () => OpenSwim,
  open: OpenFrameSource,
  signal: AbortSignal,
): FilmKeeper {
  let looking = false;
  const pause = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, lookAgainMs));

  /** The clip itself, opened beside its smaller copy once the coach looks closely; null where that can't be. */
  let own: Promise<FrameSource | null> | null = null;
  /** Both together stay within the one budget. */
  const openOwn = async (): Promise<FrameSource | null> => {
    const { host, document, film } = sessionOf();
    const copy = film.getState().source;
    const budget = copy?.memory().budgetBytes ?? 0;
    copy?.limitTo(budget - ownBudget);
    const opened = await openClipItself(host, document.swim(), { signal, open, budgetBytes: ownBudget });
    if (opened.ok && !signal.aborted) return opened.value.source;
    if (opened.ok) opened.value.source.close();
    copy?.limitTo(budget);
    return null;
  };
  const closeOwn = (): void => {
    void own?.then((source) => source?.close());
    own = null;
  };
  signal.addEventListener('abort', closeOwn, { once: true });

  const letGo = (): void => {
    closeOwn();
    const { film } = sessionOf();
    film.getState().source?.close();
    film.setState({ source: null, reopen: null });
  };

  /** Waits until the clip is the one the marks were made on again; false when the bench was left or it was linked anew. */
  const waitForClip = async (): Promise<boolean> => {
    const session = sessionOf();
    const { id } = session.document.swim();
    for (;;) {
      const read = await session.host.call('swim/clip-status', { id });
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

  let watching = false;

  const keeper: FilmKeeper = {
    async open(clipStatus) {
      await openFilm(sessionOf(), clipStatus, open, signal);
      if (watching) return;
      watching = true;
      void watchClip(sessionOf(), keeper.unreadable, signal);
    },
    makeCopy: (why) => makeCopy(sessionOf(), open, why, signal),
    async ownPicture(frame) {
      if (signal.aborted) return null;
      own ??= openOwn();
      const source = await own;
      // a newer frame, or a clip that has gone meanwhile: the copy's picture stays
      return source ? await source.show(frame, 0).catch(() => null) : null;
    },
    async unreadable() {
      if (looking) return;
      looking = true;
      try {
        const session = sessionOf();
        if (!(await waitForClip())) return;
        const wasGone = session.film.getState().trouble !== null;
        letGo();
        await openFilm(session, 'present', open, signal);
        if (wasGone && !signal.aborted && session.film.getState().source)
          session.say(openSwimWords('clipBack'));
      } finally {
        looking = false;
      }
    },
  };
  return keeper;
}
