import { failure, type Result, success } from '#core/host-contract/host-error';
import type { PicturesChecked } from '#core/host-contract/operations/media-operations';
import { filmStream } from './film-stream';
import { findMediaTool } from './find-media-tool';
import { runMediaTool } from './run-media-tool';
import { timingOption } from './timing-option';
import { hostJobsWords } from '#core/words/host-jobs';

interface Check {
  readonly file: string;
  /** Film track from 1. */
  readonly track: number;
  /** Frames the film is known to have. */
  readonly frames: number;
  /** Interlaced: two of the frames make one picture. */
  readonly fields: boolean;
  readonly signal: AbortSignal;
  readonly report: (share: number | null, words: string) => void;
}

/** Our default: a weak machine decodes four minutes of film in an hour. */
const timeoutMs = 3_600_000;

/**
 * Decodes a whole film, behind all other work and on one core, to learn how many of its pictures are damaged. Counted are
 * pictures in which the decoder met errors and those that never came out of it, in frames. Pictures that only lean on a
 * damaged one are not counted, as decoders do not report them.
 */
export async function checkPictures(check: Check): Promise<Result<PicturesChecked>> {
  const { file, track, frames, fields, signal, report } = check;
  const tool = await findMediaTool('ffmpeg');
  if (!tool) return failure('no-media-tool', { name: 'ffmpeg' });
  const each = fields ? 2 : 1;
  let decoded = 0;
  let patched = 0;
  let troubled = false;
  report(0, hostJobsWords('checkingEveryPicture'));
  const run = await runMediaTool(
    'ffmpeg',
    [
      // "repeat": a line for every damaged picture, also where two in a row say the same
      ...['-v', 'repeat+level+warning', '-nostats', '-progress', 'pipe:1', '-threads', '1'],
      ...['-i', `file:${file}`, '-map', `0:${filmStream(track)}`, '-an', '-sn', '-dn'],
      ...[...timingOption(tool.version), '-f', 'null', '-'],
    ],
    {
      signal,
      timeoutMs,
      inBackground: true,
      onLine: (line) => {
        const done = /^frame=\s*(\d+)/.exec(line)?.[1];
        if (done === undefined) return;
        decoded = Number(done) * each;
        report(decoded / Math.max(1, frames), hostJobsWords('checkingEveryPicture'));
      },
      onComplaint: (line) => {
        if (line.includes('corrupt decoded frame')) patched += each;
        else if (isDecoderError(line)) troubled = true;
      },
    },
  );
  // a film damaged so badly that ffmpeg gives up has been counted up to there
  if (!run.ok && (run.error.code === 'cancelled' || decoded === 0)) return run;
  const missing = Math.max(0, frames - decoded);
  // some decoders complain of what they meet and don't say in which picture
  if (troubled && patched + missing === 0) patched = each;
  return success({ patched: Math.min(patched, frames - missing), missing });
}

/** What a decoder says of pictures it can't make out, as against what a container's reader says. */
const isDecoderError = (line: string): boolean =>
  /^\[(?!avi|mpeg|asf|flv|mxf|ogg|null)\w+ @ \w+\] \[(error|fatal)\]/.test(line);
