import { findMediaTool } from './find-media-tool';
import type { KnownFilm } from './known-film';
import { runMediaTool } from './run-media-tool';
import { timingOption } from './timing-option';
import { wantedPictures } from './wanted-pictures';

/** Last pictures looked at: what leans on a picture that is not whole stands a few pictures from it at most. */
const looked = 12;

/**
 * How many frames of a film there are up to the last one that a decoder gives: a file that breaks off in the middle of a
 * picture lists that one too. Where it is known to break off (`cut`), up to the first that it doesn't give: the broken picture
 * may be shown before others that came whole. Decodes the film's end, or all of it where reading can't begin anywhere.
 */
export async function framesToTheEnd(known: KnownFilm, cut: boolean, signal: AbortSignal): Promise<number> {
  const frames = known.times.length;
  const tool = await findMediaTool('ffmpeg');
  if (!tool) return frames;
  const last = Array.from({ length: Math.min(looked, frames) }, (_, n) => Math.max(0, frames - looked) + n);
  const { input, filters } = wantedPictures(known, last);
  const came = new Set<number>();
  await runMediaTool(
    'ffmpeg',
    [
      ...['-v', 'info', '-nostats', ...input, '-vf', [...filters, 'showinfo'].join(',')],
      ...[...timingOption(tool.version), '-f', 'null', '-'],
    ],
    {
      signal,
      onComplaint: (line) => {
        const time = /showinfo.* pts: *(-?\d+)/.exec(line)?.[1];
        if (time !== undefined) came.add(Number(time));
      },
    },
  );
  const isGiven = (frame: number): boolean => came.has(known.times[frame] ?? Number.NaN);
  const firstLost = last.find((frame) => !isGiven(frame));
  if (cut && came.size > 0) return firstLost ?? frames;
  const end = last.findLast(isGiven);
  // where none of them came this way of asking is no good for the film, which is then taken as it lists itself
  return end === undefined ? frames : end + 1;
}
