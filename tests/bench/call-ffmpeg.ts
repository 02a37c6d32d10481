import { execa } from 'execa';
import { findMediaTool } from '#electron/media/find-media-tool';
import type { Seen } from '../browser/harness/page';
import { readCode } from '../browser/harness/picture-code';

/** One picture by an ffmpeg started for it alone, as a tool without a frame source would; null where there is no ffmpeg. */
export async function callFfmpeg(path: string, frame: number, rate: number): Promise<Seen | null> {
  const tool = await findMediaTool('ffmpeg');
  if (!tool) return null;
  const began = performance.now();
  const { stdout } = await execa(
    tool.path,
    [
      ...['-hide_banner', '-loglevel', 'error', '-ss', String(Math.max(0, (frame - 0.5) / rate)), '-i', path],
      ...['-frames:v', '1', '-vf', 'scale=640:360', '-pix_fmt', 'rgba', '-f', 'rawvideo', '-'],
    ],
    { encoding: 'buffer', stripFinalNewline: false },
  );
  const took = performance.now() - began;
  return { frame, took, number: readCode(new Uint8ClampedArray(stdout), 640, 360) };
}
