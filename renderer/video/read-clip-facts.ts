import { failure, success } from '#core/host-contract/host-error';
import { clipSchema } from '#core/swim-file/swim-schema';
import { cameraXmlRates, cameraXmlWithin } from '#core/timeline/camera-xml';
import { slowdownFromCameraXml } from '#core/timeline/capture-rate';
import { recordFromTable } from '#core/timeline/frame-times-record';
import { isSlowedInPart, phoneTrailerWithin } from '#core/timeline/phone-trailer';
import type { ClipFacts, ReadClipFacts } from './frame-source';
import { openFilmInWorker } from './open-film-in-worker';
import { readClipEnd } from './read-clip-bytes';

/** What a clip's container tells, and whether this window can decode it. The clip is closed again. */
export const readClipFacts: ReadClipFacts = async (input, signal) => {
  const film = await openFilmInWorker(input, signal);
  if (!film.ok) return film;
  film.value.close();
  const { facts } = film.value;
  const wrong = nonsenseIn(facts);
  if (wrong !== null) return failure('unreadable-index', { reason: wrong });
  if (facts.taggedSlowdown !== null) return success(facts);
  try {
    const end = await readClipEnd(input, Math.max(cameraXmlWithin, phoneTrailerWithin), signal);
    return success({
      ...facts,
      taggedSlowdown: cameraSlowdown(end, facts.rate),
      slowedInPart: isSlowedInPart(end),
    });
  } catch (problem) {
    if (signal.aborted) return failure('cancelled');
    return failure('cannot-read', { reason: String(problem).slice(0, 200) });
  }
};

/** What the camera's own XML at the end of a film tells. */
const cameraSlowdown = (end: Uint8Array, rate: number): number | null =>
  slowdownFromCameraXml(
    cameraXmlRates(new TextDecoder('latin1').decode(end.subarray(-cameraXmlWithin))),
    rate,
  );

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
