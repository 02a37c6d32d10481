import { failure, success } from '#core/host-contract/host-error';
import { clipSchema } from '#core/swim-file/swim-schema';
import { recordFromTable } from '#core/timeline/frame-times-record';
import type { ClipFacts, ReadClipFacts } from './frame-source';
import { openFilmAway } from './open-film-away';

/** What a clip's container tells, and whether this window can decode it. The clip is closed again. */
export const readClipFacts: ReadClipFacts = async (input, signal) => {
  const film = await openFilmAway(input, signal);
  if (!film.ok) return film;
  film.value.close();
  const { facts } = film.value;
  const wrong = nonsenseIn(facts);
  return wrong === null ? success(facts) : failure('unreadable-index', { reason: wrong });
};

const kept = clipSchema.pick({
  container: true,
  codec: true,
  width: true,
  height: true,
  rotation: true,
  frameTimes: true,
});

/** Which of the facts no swim could keep, as a damaged file may say anything of itself; null when all can be kept. */
function nonsenseIn({ container, codec, width, height, rotation, table }: ClipFacts): string | null {
  const frameTimes = recordFromTable(table);
  const checked = kept.safeParse({ container, codec, width, height, rotation, frameTimes });
  return checked.success ? null : (checked.error.issues[0]?.path.join('.') ?? 'clip');
}
