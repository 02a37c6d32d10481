import { failure, type Result, success } from '#core/host-contract/host-error';
import type { Clip } from '#core/swim-file/swim-schema';
import { fieldTable } from '#core/timeline/field-table';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { filmStream } from './film-stream';
import { probeFrameTimes } from './probe-frame-times';
import { type ProbedTrack, probeTracks } from './probe-tracks';
import type { MediaRun } from './run-media-tool';
import { selectFrames } from './select-frames';

export type WantedClip = Pick<Clip, 'frameTimes' | 'originalName' | 'fields' | 'track'>;

/** How ffmpeg is asked for frames of a clip. */
export interface WantedPictures {
  /** Arguments that open the file, from the first of the wanted frames on, and choose its film. */
  readonly input: readonly string[];
  /** Filters that let through the frames listed and no others; first in the chain. */
  readonly filters: readonly string[];
  /** Frames that come out, in order: the wanted, or all from the first to the last where naming them takes too long. */
  readonly listed: readonly number[];
  /** When the first of them is shown, in seconds of the container's own clock. */
  readonly startsAt: number;
  readonly film: ProbedTrack;
}

/** Film decoded before the first frame wanted, so that frames leaning on an earlier key picture are whole, seconds. */
const leadIn = 1.5;

/** Containers whose every picture carries its own time; in others a picture's time may depend on where reading began. */
const seekable = ['MP4', 'Matroska', 'MPEG-TS'];

/** Every field a picture of its own, the very same way as a working copy has them. */
export const everyField = 'bwdif=mode=send_field:parity=auto:deint=all';

/**
 * Finds out how to get frames of a clip (ascending, each once, at least one). Frames are told by the container's own
 * timestamps, so a frame is the frame of the table whatever seeking landed on; whoever reads counts that all of them came.
 */
export async function wantedPictures(
  file: string,
  { fields, frameTimes, originalName, track: chosen }: WantedClip,
  frames: readonly number[],
  options: MediaRun,
): Promise<Result<WantedPictures>> {
  const track = chosen ?? 1;
  const tracks = await probeTracks(file, options);
  if (!tracks.ok) return tracks;
  const film = tracks.value.tracks[track - 1];
  if (!film) return failure('no-video-track', { name: originalName });
  const { base } = film;
  const probed = await probeFrameTimes(file, track, base, options);
  if (!probed.ok) return probed;
  const table = fields ? fieldTable(probed.value) : probed.value;
  // a file that breaks off lists more pictures than it holds; fewer than the swim knows is another film
  if (table.starts.length < tableFromRecord(frameTimes).starts.length)
    return failure('clip-changed', { name: originalName });
  // back in the ticks the pictures carry where they are chosen: the stream's own, or halves of them for fields
  const times = table.starts.map((start) => Math.round(start / base.numerator));
  const first = frames[0] ?? 0;
  const last = frames.at(-1) ?? first;
  const named = selectFrames(times, frames);
  const select = named ?? `between(pts,${times[first] ?? 0},${times[last] ?? 0})`;
  const startsAt = (table.starts[first] ?? 0) / table.ticksPerSecond;
  const seek = startsAt - leadIn;
  const goes =
    seekable.includes(tracks.value.container) && seek > (table.starts[0] ?? 0) / table.ticksPerSecond;
  return success({
    input: [
      '-copyts',
      ...(goes ? ['-noaccurate_seek', '-seek_timestamp', '1', '-ss', seek.toFixed(6)] : []),
      ...['-i', `file:${file}`, '-map', `0:${filmStream(track)}`, '-an', '-sn', '-dn'],
    ],
    filters: [...(fields ? [everyField] : []), `select='${select}'`],
    startsAt,
    film,
    listed: named === null ? Array.from({ length: last - first + 1 }, (_, n) => first + n) : frames,
  });
}
