import { failure, type Result, success } from '#core/host-contract/host-error';
import type { Clip } from '#core/swim-file/swim-schema';
import { fieldTable } from '#core/timeline/field-table';
import type { FrameTable } from '#core/timeline/frame-table';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { probeFrameTimes } from './probe-frame-times';
import { type ProbedTrack, probeTracks } from './probe-tracks';
import type { MediaRun } from './run-media-tool';

export type WantedClip = Pick<Clip, 'frameTimes' | 'originalName' | 'fields' | 'track'>;

/** A clip's file with its frames found: what has to be known before any picture of it can be asked for by its time. */
export interface KnownFilm {
  readonly file: string;
  readonly track: number;
  readonly fields: boolean;
  readonly container: string;
  readonly film: ProbedTrack;
  /** As the file has it now, fields counted where the clip counts them. */
  readonly table: FrameTable;
  /** Start of each frame in the ticks its picture carries where pictures are chosen: the stream's own, or halves of them. */
  readonly times: readonly number[];
}

/** Finds a clip's frames in its file: its headers and the list of its pictures are read, nothing is decoded. */
export async function knowFilm(
  file: string,
  { fields, frameTimes, originalName, track: chosen }: WantedClip,
  options: MediaRun,
): Promise<Result<KnownFilm>> {
  const track = chosen ?? 1;
  const tracks = await probeTracks(file, options);
  if (!tracks.ok) return tracks;
  const film = tracks.value.tracks[track - 1];
  if (!film) return failure('no-video-track', { name: originalName });
  const probed = await probeFrameTimes(file, track, film.base, { ...options, fieldSets: film.fieldSets });
  if (!probed.ok) return probed;
  const known = knownFilm({ file, track, fields, film, container: tracks.value.container }, probed.value);
  // a file that breaks off lists more pictures than it holds; fewer than the swim knows is another film
  if (known.table.starts.length < tableFromRecord(frameTimes).starts.length)
    return failure('clip-changed', { name: originalName });
  return success(known);
}

/** A film with its coded pictures listed; where fields are counted each picture is two frames. */
export function knownFilm(film: Omit<KnownFilm, 'table' | 'times'>, coded: FrameTable): KnownFilm {
  const table = film.fields ? fieldTable(coded) : coded;
  const times = table.starts.map((start) => Math.round(start / film.film.base.numerator));
  return { ...film, table, times };
}
