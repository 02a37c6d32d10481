import { existsSync } from 'node:fs';
import { rename, rm } from 'node:fs/promises';
import type { Result } from '#core/host-contract/host-error';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { knowFilm } from '#electron/media/known-film';
import { lookAtFilm } from '#electron/media/look-at-film';
import { makeWorkingCopy } from '#electron/media/make-working-copy';
import { type MadeClip, makeClip } from '../../browser/harness/make-clips';
import type { HarnessServer } from '../../browser/harness/serve';
import { type CopiedClip, steppingFilms } from './stepping-clips';

/** A film that is there to be walked over. */
export interface SteppingFilm {
  readonly name: string;
  readonly rate: number;
  readonly pictures: number;
  /** The file whose pictures are shown. */
  readonly path: string;
  /** What the window opens: its address, no budget of its own, and the working copy's address where that stands for it. */
  readonly opening: readonly [address: string, budgetBytes: undefined, standIn: string | undefined];
}

/** Makes the films named, or all, where they are not made yet. */
export async function makeSteppingFilms(
  names: readonly string[],
  server: HarnessServer,
): Promise<SteppingFilm[]> {
  const unknown = names.find((name) => !(name in steppingFilms));
  if (unknown !== undefined)
    throw new Error(`No clip is called ${unknown}: ${Object.keys(steppingFilms).join(', ')}`);
  const films: SteppingFilm[] = [];
  for (const [key, film] of Object.entries(steppingFilms)) {
    if (names.length > 0 && !names.includes(key)) continue;
    const { name, rate, pictures } = film;
    const original = await clipOf('copyOf' in film ? film.copyOf : film);
    const path = 'copyOf' in film ? await copyMade(film, original) : original;
    const opening = [
      server.clip(original),
      undefined,
      path === original ? undefined : server.clip(path),
    ] as const;
    films.push({ name: name.replace(/^bench-/, ''), rate, pictures, path, opening });
  }
  return films;
}

async function clipOf(clip: MadeClip): Promise<string> {
  const path = await makeClip(clip);
  if (!path) throw new Error('No ffmpeg here to make the clips with');
  return path;
}

/** The copy that the app's own job makes of a clip, its frames checked by that job one for one. */
async function copyMade({ name, copyOf }: CopiedClip, original: string): Promise<string> {
  const target = original.replace(copyOf.name, name).replace(/\.\w+$/, '.mp4');
  if (existsSync(target)) return target;
  const draft = `${target}.draft.${process.pid}`;
  const { signal } = new AbortController();
  const report = (): void => undefined;
  const film = orThrow(
    await lookAtFilm({ file: original, track: null, scratch: `${draft}.jpg`, signal, report }),
  );
  const { fields, frameTimes, track } = film;
  const known = await knowFilm(
    original,
    { fields, frameTimes, track, originalName: copyOf.name },
    { signal },
  );
  try {
    orThrow(
      await makeWorkingCopy({
        ...{ known: orThrow(known), target: draft, pieces: `${draft}.pieces` },
        ...{ table: tableFromRecord(frameTimes), signal, report, onPiece: report },
        focus: { frame: () => 0, onMove: () => report },
      }),
    );
    await rename(draft, target);
  } finally {
    await rm(draft, { force: true });
  }
  return target;
}

function orThrow<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}
