import { errorWords } from '#core/host-contract/error-words';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { checkPictures } from '../host/check-pictures';
import type { OpenFrameSource } from '../video/frame-source';
import { openCopy, openSwimFilm } from '../video/open-swim-film';
import type { OpenSwim, ClipStatus } from './open-swim';
import { makeCopy, reopenerOf } from './make-copy';
import { openSwimWords } from '#core/words/open-swim';

/**
 * Opens the swim's film, but shows it only when its frames are the ones the marks were made on. A clip that this window
 * can't decode gets a working copy; a clip that is not there is shown from its working copy, if it has one.
 */
export async function openFilm(
  session: OpenSwim,
  clipStatus: ClipStatus,
  open: OpenFrameSource,
  signal: AbortSignal,
): Promise<void> {
  const { film, host, document } = session;
  const swim = document.swim();
  let checking = false;
  const onBroken = (broken: number): void => {
    film.setState({ broken });
    if (checking || film.getState().checked) return;
    checking = true;
    void checkWhole();
  };
  const checkWhole = async (): Promise<void> => {
    const { fields, frameTimes } = swim.clip;
    const checked = await checkPictures(host, {
      ...{ of: { swimId: swim.id }, track: swim.clip.track ?? 1, fields, signal },
      frames: tableFromRecord(frameTimes).starts.length,
    });
    if (checked.ok && !signal.aborted) film.setState({ checked: checked.value });
  };
  const opened =
    clipStatus === 'present'
      ? await openSwimFilm(host, swim, { signal, open, onBroken })
      : await openCopy(host, swim, { signal, open });
  if (signal.aborted) {
    if (opened.ok) opened.value.source.close();
    return;
  }
  if (opened.ok) {
    film.setState({
      source: opened.value.source,
      from: opened.value.from,
      reopen: reopenerOf(session, open),
      trouble: null,
    });
    if (clipStatus !== 'present') session.say(openSwimWords('clipItselfNot'));
    // one that was begun earlier, or in another window, is taken over as soon as it is made
    const look = opened.value.from === 'clip' ? await host.call('copy/look', { id: swim.id }) : null;
    if (look?.ok && look.value.state === 'making') await makeCopy(session, open, 'slow', signal);
    return;
  }
  if (clipStatus !== 'present') {
    film.setState({ source: null, reopen: null, trouble: { kind: clipStatus } });
    return;
  }
  const { code } = opened.error;
  if (code === 'unsupported-codec' || code === 'unreadable-index') {
    film.setState({ source: null, reopen: null, trouble: null });
    await makeCopy(session, open, 'needed', signal);
    return;
  }
  const { what, todo } = errorWords(opened.error);
  film.setState({
    source: null,
    reopen: null,
    trouble: code === 'clip-changed' ? { kind: 'changed' } : { kind: 'unreadable', words: `${what} ${todo}` },
  });
}
