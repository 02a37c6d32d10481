import { mkdir, readdir, readFile, rm } from 'node:fs/promises';
import path from 'node:path';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { Still } from '#core/host-contract/operations/media-operations';
import { findMediaTool } from './find-media-tool';
import type { KnownFilm } from './known-film';
import { runMediaTool } from './run-media-tool';
import { timingOption } from './timing-option';
import { wantedPictures } from './wanted-pictures';

/** Longest side of a still that is looked at for a moment (our default, as of a working copy). */
const longestSide = 1920;

/**
 * Frames of a film as JPEGs, each the frame it says: for the moment before its working copy has them. `asked` is the one that
 * matters; of the others, which follow one another, all come or none.
 */
export async function readStills(
  known: KnownFilm,
  frames: readonly number[],
  asked: number,
  scratch: string,
  signal?: AbortSignal,
): Promise<Result<readonly Still[]>> {
  const tool = await findMediaTool('ffmpeg');
  if (!tool) return failure('no-media-tool', { name: 'ffmpeg' });
  const { width, height } = known.film;
  const share = Math.min(1, longestSide / Math.max(width, height));
  const side = (length: number): number => Math.max(1, Math.round(length * share));
  const read = async (wanted: readonly number[]): Promise<Result<readonly Still[]>> => {
    const { input, filters, listed } = wantedPictures(known, wanted);
    await mkdir(scratch, { recursive: true });
    const run = await runMediaTool(
      'ffmpeg',
      [
        ...['-v', 'error', '-y', ...input],
        ...['-vf', [...filters, `scale=${side(width)}:${side(height)}`, 'setsar=1'].join(',')],
        ...[...timingOption(tool.version), '-frames:v', String(listed.length), '-c:v', 'mjpeg', '-q:v', '3'],
        ...['-f', 'image2', '-start_number', '0', `file:${path.join(scratch, '%d.jpg')}`],
      ],
      { timeoutMs: 120_000, ...(signal ? { signal } : {}) },
    );
    const came = (await readdir(scratch)).length;
    // which of them did not come can't be told: none is shown under another's name
    if (came !== listed.length || !run.ok) return run.ok ? failure('truncated') : run;
    const stills: Still[] = [];
    for (const [place, frame] of listed.entries()) {
      const jpeg = (await readFile(path.join(scratch, `${place}.jpg`))).toString('base64');
      stills.push({ frame, jpeg });
    }
    return success(stills);
  };
  const clean = (): Promise<void> => rm(scratch, { recursive: true, force: true });
  try {
    const all = await read(frames);
    if (all.ok || frames.length === 1 || all.error.code !== 'truncated') return all;
    await clean();
    return await read([asked]);
  } finally {
    await clean();
  }
}
