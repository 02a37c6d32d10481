import { success } from '#core/host-contract/host-error';
import { errorWords } from '#core/host-contract/error-words';
import { copyMadeSchema } from '#core/host-contract/operations/media-operations';
import { followJob } from '../host/follow-job';
import type { OpenFrameSource } from '../video/frame-source';
import { openCopy, openSwimFilm } from '../video/open-swim-film';
import type { OpenSwim, Copying, FilmState } from './open-swim';
import { growWhileMade, stillsOf } from './grow-while-made';
import { openSwimWords } from '#core/words/open-swim';

/** Room for the pictures around the coach while the copy takes over from what was shown before it. */
const handOverBytes = 64 * 2 ** 20;

/**
 * Has the working copy made, tells how far it is, and shows its pictures instead of the clip's as soon as it is there; the
 * frame on the stage, the marks and the selection stay as they are. `needed`: there is no picture without it; `slow`: the
 * clip goes on being shown meanwhile.
 */
export async function makeCopy(
  session: OpenSwim,
  open: OpenFrameSource,
  why: Copying['why'],
  signal: AbortSignal,
): Promise<void> {
  const { film, host, document } = session;
  if (film.getState().copying) return;
  const swim = document.swim();
  const stop = new AbortController();
  const whole = AbortSignal.any([signal, stop.signal]);
  const tell = (share: number | null, words: string): void => {
    const pieces = film.getState().copying?.pieces ?? [];
    if (!whole.aborted) film.setState({ copying: { why, share, words, pieces, stop: () => stop.abort() } });
  };
  film.setState({ trouble: null, slowMs: null });
  tell(null, openSwimWords('makingWorkingCopy'));
  const started = await host.call('copy/make', { id: swim.id, frame: session.view.getState().frame });
  const ended = new AbortController();
  if (started.ok && !whole.aborted)
    void growWhileMade(session, open, why, signal, AbortSignal.any([whole, ended.signal]));
  // leaving the bench goes on making it; only the coach's own stop cancels the job
  const made = started.ok
    ? await followJob(host, started.value.jobId, {
        result: copyMadeSchema,
        signal: stop.signal,
        gone: signal,
        onProgress: tell,
      })
    : started;
  ended.abort();
  if (signal.aborted) return;
  const before = film.getState().source;
  const budget = before?.memory().budgetBytes;
  // until it stands in, the copy has a part of the one budget
  if (before && budget) before.limitTo(budget - handOverBytes);
  const part = budget ? { budgetBytes: handOverBytes } : {};
  const copy = made.ok ? await openCopy(host, swim, { signal, open, ...part }) : made;
  if (signal.aborted) {
    if (copy.ok) copy.value.source.close();
    return;
  }
  film.setState({ copying: null });
  if (!copy.ok) {
    const { what, todo } = errorWords(copy.error);
    const words = copy.error.code === 'cancelled' ? openSwimWords('noWorkingCopy') : `${what} ${todo}`;
    if (why === 'needed' && copy.error.code === 'copy-differs') {
      // some of its pictures no decoder gives: those it does give are shown, one by one
      film.getState().source?.close();
      film.setState({ source: stillsOf(session, signal), from: 'clip', reopen: null, trouble: null });
      session.say(openSwimWords('stillsInstead', { what, todo }));
    } else if (why === 'needed') {
      film.getState().source?.close();
      film.setState({ source: null, reopen: null, trouble: { kind: 'no-copy', words } });
    } else if (copy.error.code !== 'cancelled') session.say(words);
    if (budget) before?.limitTo(budget);
    return;
  }
  const { source } = copy.value;
  // the picture the coach is at is decoded before the other film goes
  await source.show(session.view.getState().frame, 0).catch(() => undefined);
  if (signal.aborted) {
    source.close();
    return;
  }
  film.setState({
    source,
    from: 'copy',
    reopen: reopenerOf(session, open),
    trouble: null,
    slowMs: null,
    broken: 0,
  });
  before?.close();
  if (budget) source.limitTo(budget);
  session.say(openSwimWords('steppingThroughWorking'));
}

/** Opens the same pictures once more, for work that must not disturb the stepping. */
export function reopenerOf(
  { host, document }: OpenSwim,
  open: OpenFrameSource,
): NonNullable<FilmState['reopen']> {
  return async (budgetBytes, signal) => {
    const again = await openSwimFilm(host, document.swim(), { signal, budgetBytes, open });
    return again.ok ? success(again.value.source) : again;
  };
}
