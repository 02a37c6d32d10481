import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { execa } from 'execa';
import { findMediaTool } from '#electron/media/find-media-tool';
import { codeFilter } from './picture-code';

/** A clip whose pictures carry their own number, named by the property it has. */
export interface MadeClip {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  /** Pictures made (before any cut). */
  readonly pictures: number;
  readonly rate: number;
  readonly extension: string;
  /** ffmpeg options between the pictures and the file. */
  readonly encode: readonly string[];
  /** Filters after the numbers are written. */
  readonly after?: string;
  /** Turning written into the track header: a, b, c, d of its matrix. */
  readonly matrix?: readonly [number, number, number, number];
  /** Length written into the edit list, in the movie's own ticks (ffmpeg writes milliseconds). */
  readonly editLength?: number;
  /** Pictures, by their number, that have the time of the one before them: no frames of their own. */
  readonly twins?: readonly number[];
  /** A second call that works on the first one's file without re-encoding. */
  readonly remux?: { readonly input?: readonly string[]; readonly output: readonly string[] };
}

const cache = fileURLToPath(new URL('../../../.cache/clips/', import.meta.url));

/** Makes a clip, or finds it made before; null when no ffmpeg is at hand. */
export async function makeClip(clip: MadeClip): Promise<string | null> {
  const path = `${cache}${clip.name}.${clip.extension}`;
  if (existsSync(path)) return path;
  const tool = await findMediaTool('ffmpeg');
  if (!tool) return null;
  mkdirSync(cache, { recursive: true });
  const seconds = clip.pictures / clip.rate;
  const filters = [codeFilter(clip.width, clip.height), ...(clip.after ? [clip.after] : [])].join(',');
  const draft = `${cache}${clip.name}.draft.${process.pid}.${clip.extension}`;
  const common = ['-hide_banner', '-loglevel', 'error', '-y'];
  const picture = `testsrc2=size=${clip.width}x${clip.height}:rate=${clip.rate}:duration=${seconds}`;
  try {
    await execa(tool.path, [
      ...common,
      '-f',
      'lavfi',
      '-i',
      picture,
      '-vf',
      filters,
      '-fps_mode',
      'passthrough',
      '-pix_fmt',
      'yuv420p',
      ...clip.encode,
      draft,
    ]);
    if (clip.remux) {
      const second = `${cache}${clip.name}.remux.${process.pid}.${clip.extension}`;
      const { input = [], output } = clip.remux;
      await execa(tool.path, [...common, ...input, '-i', draft, '-c', 'copy', ...output, second]);
      renameSync(second, draft);
    }
    if (clip.editLength !== undefined) writeEditLength(draft, clip.editLength);
    if (clip.matrix) writeMatrix(draft, clip.matrix);
    renameSync(draft, path);
  } finally {
    rmSync(draft, { force: true });
  }
  return path;
}

/** Writes a turning into an MP4's first track header (version 0: the matrix is 40 bytes after the version). */
function writeMatrix(path: string, [a, b, c, d]: NonNullable<MadeClip['matrix']>): void {
  const bytes = readFileSync(path);
  const box = bytes.indexOf('tkhd', 0, 'latin1');
  const matrix = box + 4 + 40;
  for (const [place, value] of [
    [0, a],
    [1, b],
    [3, c],
    [4, d],
  ] as const) {
    bytes.writeInt32BE(value * 65536, matrix + place * 4);
  }
  writeFileSync(path, bytes);
}

/** Writes the length of an MP4's first edit (version 0), as a phone does when a clip is trimmed. */
function writeEditLength(path: string, length: number): void {
  const bytes = readFileSync(path);
  bytes.writeUInt32BE(length, bytes.indexOf('elst', 0, 'latin1') + 4 + 8);
  writeFileSync(path, bytes);
}
