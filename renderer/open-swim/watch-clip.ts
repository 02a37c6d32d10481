import type { OpenSwim, FilmKeeper } from './open-swim';
import { openSwimWords } from '#core/words/open-swim';

/** Our default: how often the clip's file is looked at while its pictures are on screen. */
const watchEveryMs = 3000;

/**
 * Notices that another film has taken the clip's place while it is open. Pictures that are held would hide it: only the old
 * film's own are ever shown, but the coach would step through a clip that is no longer there. A clip that has merely gone
 * (its disk was taken away) is left alone until a picture of it is wanted.
 */
export async function watchClip(
  session: OpenSwim,
  unreadable: FilmKeeper['unreadable'],
  signal: AbortSignal,
): Promise<void> {
  const { id } = session.document.swim();
  let told = false;
  while (!signal.aborted) {
    await new Promise((resolve) => setTimeout(resolve, watchEveryMs));
    const { source, from } = session.film.getState();
    if (signal.aborted || source === null) continue;
    const look = await session.host.call('swim/clip-status', { id }, signal);
    if (signal.aborted || !look.ok) continue;
    const changed = look.value.clipStatus === 'changed';
    if (changed && from === 'copy' && !told) session.say(openSwimWords('anotherFilmHas'));
    told = changed;
    if (changed && from === 'clip') await unreadable();
  }
}
