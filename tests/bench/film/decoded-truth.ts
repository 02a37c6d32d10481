import { execa } from 'execa';
import { findMediaTool } from '#electron/media/find-media-tool';
import { everyField } from '#electron/media/wanted-pictures';

/** Pictures are compared at this size, in brightness. */
export const small = { width: 64, height: 36 } as const;

export interface TruePicture {
  /** Seconds on the container's own clock. */
  readonly time: number;
  readonly grey: Uint8Array;
}

export interface Truth {
  readonly pictures: readonly TruePicture[];
  /** Shown size in square pixels, worked out from what ffmpeg's decoder gives after turning. */
  readonly width: number;
  readonly height: number;
}

/** A whole film decoded by ffmpeg in one go, with times and sizes as its filters see them; null where it decodes nothing. */
export async function decodeTruth(file: string, fields: boolean): Promise<Truth | null> {
  const tool = await findMediaTool('ffmpeg');
  if (!tool) throw new Error('the truth comes from ffmpeg');
  const filters = [
    ...(fields ? [everyField] : []),
    'showinfo',
    `scale=${small.width}:${small.height}:flags=area`,
    'format=gray',
  ];
  const run = await execa(
    tool.path,
    [
      ...['-v', 'info', '-nostats', '-copyts', '-i', file, '-map', '0:V:0', '-vf', filters.join(',')],
      ...['-fps_mode', 'passthrough', '-f', 'rawvideo', 'pipe:1'],
    ],
    { encoding: 'buffer', reject: false, stripFinalNewline: false },
  );
  const said = Buffer.from(run.stderr).toString('utf8');
  const rows = [...said.matchAll(/pts_time:(-?[\d.]+|NOPTS).*? sar:(\d+)\/(\d+) s:(\d+)x(\d+)/g)];
  const bytes = Buffer.from(run.stdout as Uint8Array);
  const length = small.width * small.height;
  const first = rows[0];
  if (!first) return null;
  const [across, up, wide, high] = first.slice(2).map(Number) as [number, number, number, number];
  const stretched = across > 0 && up > 0 ? across / up : 1;
  return {
    pictures: rows
      .slice(0, bytes.length / length)
      .map(([, time], n) => ({ time: Number(time), grey: bytes.subarray(n * length, (n + 1) * length) })),
    width: Math.round(wide * Math.max(1, stretched)),
    height: Math.round(high / Math.min(1, stretched)),
  };
}

/** Mean difference in brightness of two small pictures, 0 to 255. */
export function apart(one: Uint8Array, other: Uint8Array): number {
  let sum = 0;
  for (let n = 0; n < one.length; n++) sum += Math.abs((one[n] ?? 0) - (other[n] ?? 0));
  return sum / one.length;
}
