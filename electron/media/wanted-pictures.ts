import { filmStream } from './film-stream';
import type { KnownFilm } from './known-film';
import { selectFrames } from './select-frames';

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
}

/** Film decoded before the first frame wanted, so that frames leaning on an earlier key picture are whole, seconds. */
const leadIn = 1.5;

/** Containers whose every picture carries its own time; in others a picture's time may depend on where reading began. */
const seekable = ['MP4', 'Matroska', 'MPEG-TS'];

/** Of pictures at one time lets the first through: the one that is a frame of the table. */
export const oneAtATime = "select='not(eq(pts,prev_pts))'";

/** Whether reading a film may begin anywhere in it. */
export const canBeginAnywhere = ({ container }: KnownFilm): boolean => seekable.includes(container);

/** Every field a picture of its own, the very same way as a working copy has them. */
export const everyField = 'bwdif=mode=send_field:parity=auto:deint=all';

/**
 * How to get frames of a film (ascending, each once, at least one). Frames are told by the container's own timestamps, so a
 * frame is the frame of the table whatever seeking landed on; whoever reads counts that all of them came.
 */
export function wantedPictures(known: KnownFilm, frames: readonly number[]): WantedPictures {
  const { file, track, fields, table, times } = known;
  const first = frames[0] as number;
  const last = frames.at(-1) ?? first;
  const named = selectFrames(times, frames);
  const select = named ?? `between(pts,${times[first] as number},${times[last] as number})`;
  const startsAt = (table.starts[first] as number) / table.ticksPerSecond;
  const seek = startsAt - leadIn;
  const goes = canBeginAnywhere(known) && seek > (table.starts[0] as number) / table.ticksPerSecond;
  return {
    input: [
      '-copyts',
      ...(goes ? ['-noaccurate_seek', '-seek_timestamp', '1', '-ss', seek.toFixed(6)] : []),
      ...['-i', `file:${file}`, '-map', `0:${filmStream(track)}`, '-an', '-sn', '-dn'],
    ],
    filters: [oneAtATime, ...(fields ? [everyField] : []), `select='${select}'`],
    startsAt,
    listed: named === null ? Array.from({ length: last - first + 1 }, (_, n) => first + n) : frames,
  };
}
