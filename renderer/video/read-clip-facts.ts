import { success } from '#core/host-contract/host-error';
import type { ReadClipFacts } from './frame-source';
import { openFilmAway } from './open-film-away';

/** What a clip's container tells, and whether this window can decode it. The clip is closed again. */
export const readClipFacts: ReadClipFacts = async (input, signal) => {
  const film = await openFilmAway(input, signal);
  if (!film.ok) return film;
  film.value.close();
  return success(film.value.facts);
};
