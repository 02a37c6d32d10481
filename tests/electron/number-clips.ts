import { execa } from 'execa';
import { findMediaTool } from '#electron/media/find-media-tool';
import { codeFilter } from '#tests/browser/harness/picture-code';

interface Making {
  readonly rate: number;
  readonly pictures: number;
  /** Filters after the numbers are written. */
  readonly after?: string;
  readonly options: readonly string[];
}

/** Makes a film of 640 × 360 whose pictures carry their own number. */
export async function makeNumberClip(
  file: string,
  { rate, pictures, after, options }: Making,
): Promise<void> {
  const tool = await findMediaTool('ffmpeg');
  if (!tool) throw new Error('these tests need ffmpeg');
  const filters = [codeFilter(640, 360), ...(after ? [after] : [])].join(',');
  await execa(tool.path, [
    ...[
      '-v',
      'error',
      '-y',
      '-f',
      'lavfi',
      '-i',
      `testsrc2=size=640x360:rate=${rate}:duration=${pictures / rate}`,
    ],
    ...['-vf', filters, '-fps_mode', 'passthrough', '-pix_fmt', 'yuv420p'],
    ...options,
    file,
  ]);
}
