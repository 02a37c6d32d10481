import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { hostErrorSchema, type Result } from '#core/host-contract/host-error';
import { hostFilmSchema } from '#core/host-contract/operations/media-operations';
import { lookAtFilm } from '#electron/media/look-at-film';
import type { Tasted } from '../browser/harness/taste-clip';
import type { MediaClip } from './media-clips';
import { mutateBytes, pickOf, type Random } from './mutate';
import type { FuzzTarget } from './run-fuzz';

/** What lies in the part of a clip where its pictures are told of is mangled; what comes before stays. */
function mangledClip(random: Random, { bytes, headFrom, headBytes }: MediaClip): Uint8Array {
  const mangled = mutateBytes(random, bytes.subarray(headFrom), headBytes);
  return Uint8Array.from([...bytes.subarray(0, headFrom), ...mangled]);
}

function written(folder: string, random: Random, clips: readonly MediaClip[]): string {
  const clip = pickOf(random, clips);
  if (!clip) throw new Error('there is no clip to mangle');
  const file = path.join(folder, `mangled.${clip.extension}`);
  writeFileSync(file, mangledClip(random, clip));
  return file;
}

const typed = (result: Result<unknown>): void => {
  if (!result.ok) hostErrorSchema.parse(result.error);
};

export interface MediaUnderFire {
  readonly targets: readonly FuzzTarget[];
  close(): Promise<void>;
}

/**
 * Mangled film, read as the window reads an added clip (`taste`, in a real browser) and as the host's tools do. Taken whole
 * means: a swim of it can be written and read again, and a picture of it is shown or said to be lost.
 */
export function mediaUnderFire(
  clips: readonly MediaClip[],
  taste: (file: string) => Promise<Tasted>,
): MediaUnderFire {
  const folder = mkdtempSync(path.join(tmpdir(), 'submark-media-'));
  const signal = new AbortController().signal;
  const scratch = path.join(folder, 'picture.jpg');
  return {
    targets: [
      {
        name: 'media in the window',
        async run(random, note) {
          const file = written(folder, random, clips);
          note(file);
          const { facts, trouble } = await taste(file);
          typed(facts);
          if (trouble !== null) throw new Error(trouble);
        },
      },
      {
        name: 'media through the tools',
        async run(random, note) {
          const file = written(folder, random, clips);
          note(file);
          const film = await lookAtFilm({
            ...{ file, track: null, scratch, signal },
            report: () => undefined,
          });
          typed(film);
          if (film.ok) hostFilmSchema.parse(film.value);
        },
      },
    ],
    close: async () => rmSync(folder, { recursive: true, force: true }),
  };
}
