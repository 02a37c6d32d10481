import { execa } from 'execa';
import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { findMediaTool } from '#electron/media/find-media-tool';
import { codeFilter } from '../../browser/harness/picture-code';

/** An odd file: pictures made and coded by ffmpeg, then perhaps spoilt. */
export interface OddFile {
  /** With the ending that tells ffmpeg the container. */
  readonly name: string;
  readonly size?: readonly [width: number, height: number];
  readonly rate?: string;
  readonly pictures?: number;
  /** Filters after the numbers are written. */
  readonly after?: string;
  readonly encode: readonly string[];
  /** A second call on the file, without coding anew. */
  readonly remux?: readonly string[];
  /** A second input for the first call: sound, another film. */
  readonly beside?: readonly string[];
  readonly spoil?: (bytes: Buffer) => Buffer;
  /** Two moments a picture. */
  readonly fields?: boolean;
  readonly soundOnly?: boolean;
  /** Words of the card that refuses it; without them it must be added. */
  readonly refused?: RegExp;
}

const h264 = ['-c:v', 'libx264', '-preset', 'veryfast', '-g', '12', '-bf', '2', '-pix_fmt', 'yuv420p'];
const hevc = [
  '-c:v',
  'libx265',
  '-preset',
  'ultrafast',
  '-x265-params',
  'log-level=error:keyint=12:bframes=2',
];
const vp9 = ['-c:v', 'libvpx-vp9', '-deadline', 'realtime', '-cpu-used', '8', '-g', '12', '-b:v', '400k'];
const av1 = ['-c:v', 'libsvtav1', '-preset', '12', '-g', '12', '-svtav1-params', 'enable-qm=0'];
const mjpeg = ['-c:v', 'mjpeg', '-q:v', '6', '-pix_fmt', 'yuvj420p'];
const mpeg4 = ['-c:v', 'mpeg4', '-q:v', '4', '-g', '12', '-bf', '2'];
const mpeg2 = ['-c:v', 'mpeg2video', '-q:v', '4', '-g', '12', '-bf', '2'];
const woven = 'interlace=scan=tff:lowpass=off';

const cutAt =
  (share: number) =>
  (bytes: Buffer): Buffer =>
    bytes.subarray(0, Math.round(bytes.length * share));
/** Wrong bytes in the middle of the pictures, never in an index at either end. */
const flip =
  (share: number, length: number) =>
  (bytes: Buffer): Buffer => {
    const from = Math.round(bytes.length * share);
    for (let n = 0; n < length; n++) bytes[from + n] = (n * 37) & 0xff;
    return bytes;
  };

/** A coding's name in the container exchanged for one that nobody here can decode. */
const renamed =
  (from: string, to: string) =>
  (bytes: Buffer): Buffer =>
    Buffer.from(bytes.toString('latin1').replaceAll(from, to), 'latin1');

/** Inserts a clean aperture into the first sample entry of an MP4 whose index stands behind its pictures. */
export function withCleanAperture(bytes: Buffer, width: number, height: number): Buffer {
  const box = Buffer.alloc(40);
  box.writeUInt32BE(40);
  box.write('clap', 4, 'latin1');
  for (const [n, number] of [width, 1, height, 1, 0, 1, 0, 1].entries()) box.writeUInt32BE(number, 8 + 4 * n);
  const entry = bytes.indexOf('avc1', bytes.lastIndexOf('stsd', undefined, 'latin1'), 'latin1') - 4;
  const end = entry + bytes.readUInt32BE(entry);
  const grown = Buffer.concat([bytes.subarray(0, end), box, bytes.subarray(end)]);
  for (const name of ['moov', 'trak', 'mdia', 'minf', 'stbl', 'stsd', 'avc1']) {
    const at = grown.lastIndexOf(name, entry + 4, 'latin1') - 4;
    grown.writeUInt32BE(grown.readUInt32BE(at) + 40, at);
  }
  return grown;
}

const sized: readonly OddFile[] = [
  { name: 'h264-10x12.mp4', size: [10, 12], encode: h264 },
  { name: 'h264-12x10.mov', size: [12, 10], encode: h264 },
  { name: 'vp9-10x12.webm', size: [10, 12], encode: vp9 },
  { name: 'mjpeg-10x12.avi', size: [10, 12], encode: mjpeg },
  { name: 'hevc-18x34.mp4', size: [18, 34], encode: [...hevc, '-tag:v', 'hvc1'] },
  { name: 'vp9-odd-321x181.webm', size: [321, 181], encode: vp9 },
  { name: 'av1-odd-321x181.mp4', size: [321, 181], encode: av1 },
  { name: 'h264-444-odd-321x181.mkv', size: [321, 181], encode: [...h264, '-pix_fmt', 'yuv444p'] },
  { name: 'h264-cropped-324x182.mp4', size: [324, 182], encode: h264 },
  { name: 'h264-crop-rect.mp4', encode: [...h264, '-x264-params', 'crop-rect=0,12,22,8'] },
  { name: 'hevc-cropped-332x186.mkv', size: [332, 186], encode: hevc },
  { name: 'h264-pixels-16-11.mp4', size: [352, 288], after: 'setsar=16/11', encode: h264 },
  { name: 'h264-pixels-8-9.mkv', size: [352, 240], after: 'setsar=8/9', encode: h264 },
  { name: 'vp9-pixels-4-3.mkv', size: [320, 240], after: 'setsar=4/3', encode: vp9 },
  { name: 'mpeg2-pixels-16-11.mpg', size: [352, 288], after: 'setsar=16/11', encode: mpeg2 },
  { name: 'h264-turned-90.mp4', encode: h264, remux: ['-metadata:s:v', 'rotate=90'] },
  { name: 'h264-turned-180.mov', encode: h264, remux: ['-metadata:s:v', 'rotate=180'] },
  {
    name: 'hevc-turned-270.mov',
    encode: [...hevc, '-tag:v', 'hvc1'],
    remux: ['-metadata:s:v', 'rotate=270'],
  },
  {
    name: 'h264-turned-pixels.mp4',
    size: [352, 288],
    after: 'setsar=16/11',
    encode: h264,
    remux: ['-metadata:s:v', 'rotate=90'],
  },
  { name: 'h264-clean-aperture.mp4', encode: h264, spoil: (bytes) => withCleanAperture(bytes, 300, 160) },
];

const timed: readonly OddFile[] = [
  {
    name: 'h264-variable.mp4',
    after: "setpts='N/30/TB+0.004*mod(N,5)/TB'",
    encode: [...h264, '-video_track_timescale', '90000'],
  },
  { name: 'h264-variable.mkv', after: "setpts='N/30/TB+0.007*mod(N,3)/TB'", encode: h264 },
  { name: 'h264-23-976.mp4', rate: '24000/1001', encode: h264 },
  { name: 'h264-240.mov', rate: '240', encode: h264 },
  { name: 'h264-open-groups.mp4', encode: [...h264, '-x264-params', 'open-gop=1:bframes=3'] },
  { name: 'h264-late-start.mp4', encode: [...h264, '-output_ts_offset', '1.5'] },
  { name: 'h264-edit-list.mp4', encode: h264, pictures: 48, remux: ['-ss', '0.7'] },
  { name: 'h264-clock-wraps.ts', encode: [...h264, '-output_ts_offset', '95443.2'] },
  { name: 'h264-blu-ray-packets.m2ts', encode: [...h264, '-f', 'mpegts', '-mpegts_m2ts_mode', '1'] },
  { name: 'h264-fragments.mp4', encode: [...h264, '-movflags', 'frag_keyframe+empty_moov'] },
  {
    name: 'vp9-hidden-pictures.webm',
    pictures: 40,
    encode: [
      '-c:v',
      'libvpx-vp9',
      '-auto-alt-ref',
      '1',
      '-lag-in-frames',
      '16',
      '-g',
      '20',
      '-b:v',
      '300k',
      '-cpu-used',
      '4',
    ],
  },
  {
    name: 'vp8.webm',
    encode: ['-c:v', 'libvpx', '-auto-alt-ref', '1', '-lag-in-frames', '10', '-g', '12', '-b:v', '400k'],
  },
];

const coded: readonly OddFile[] = [
  { name: 'h264-10-bit.mp4', encode: [...h264, '-pix_fmt', 'yuv420p10le'] },
  { name: 'h264-422.mov', encode: [...h264, '-pix_fmt', 'yuv422p'] },
  { name: 'h264.avi', encode: h264 },
  { name: 'h264.flv', encode: h264 },
  { name: 'hevc-10-bit.mkv', encode: [...hevc, '-pix_fmt', 'yuv420p10le'] },
  { name: 'av1-10-bit.webm', encode: [...av1, '-pix_fmt', 'yuv420p10le'] },
  { name: 'mpeg4.avi', encode: mpeg4 },
  { name: 'mpeg4.mp4', encode: mpeg4 },
  { name: 'mjpeg.avi', encode: mjpeg },
  { name: 'mjpeg.mov', encode: mjpeg },
  { name: 'mpeg1.mpg', encode: ['-c:v', 'mpeg1video', '-q:v', '4', '-bf', '2'], rate: '25' },
  { name: 'prores.mov', encode: ['-c:v', 'prores_ks', '-profile:v', '0'] },
  { name: 'dnxhr.mov', encode: ['-c:v', 'dnxhd', '-profile:v', 'dnxhr_lb', '-pix_fmt', 'yuv422p'] },
  { name: 'wmv.asf', encode: ['-c:v', 'wmv2', '-q:v', '4'] },
  { name: 'theora.ogv', encode: ['-c:v', 'libtheora', '-q:v', '6'] },
  { name: 'ffv1.mkv', encode: ['-c:v', 'ffv1'] },
  { name: 'huffyuv.avi', encode: ['-c:v', 'huffyuv', '-pix_fmt', 'yuv422p'] },
  { name: 'raw.avi', encode: ['-c:v', 'rawvideo', '-pix_fmt', 'yuv420p'] },
  { name: 'animation.mov', encode: ['-c:v', 'qtrle'] },
  { name: 'jpeg2000.mxf', encode: ['-c:v', 'jpeg2000', '-pix_fmt', 'yuv422p'], rate: '25' },
  {
    name: 'mpeg2-fields.ts',
    rate: '50',
    after: woven,
    pictures: 48,
    encode: [...mpeg2, '-flags', '+ilme+ildct'],
    fields: true,
  },
  {
    name: 'h264-fields.mp4',
    rate: '50',
    after: woven,
    pictures: 48,
    encode: [...h264, '-flags', '+ilme+ildct', '-x264-params', 'tff=1'],
    fields: true,
  },
  {
    name: 'dv-fields.avi',
    size: [720, 576],
    rate: '50',
    after: 'interlace=scan=bff:lowpass=off',
    pictures: 24,
    encode: ['-c:v', 'dvvideo', '-pix_fmt', 'yuv420p', '-flags', '+ilme+ildct'],
    fields: true,
  },
];

const few: readonly OddFile[] = [
  { name: 'one-picture.mp4', pictures: 1, encode: h264 },
  { name: 'one-picture.mkv', pictures: 1, encode: h264 },
  { name: 'one-picture.avi', pictures: 1, encode: mjpeg },
  { name: 'two-pictures.webm', pictures: 2, encode: vp9 },
  {
    name: 'two-films.mp4',
    encode: h264,
    beside: ['-f', 'lavfi', '-i', 'testsrc=size=160x120:rate=30:duration=1', '-map', '0', '-map', '1'],
  },
  {
    name: 'with-sound.mov',
    encode: [...h264, '-c:a', 'aac'],
    beside: ['-f', 'lavfi', '-i', 'sine=duration=0.5'],
  },
  {
    name: 'only-sound.mp4',
    soundOnly: true,
    encode: ['-map', '1', '-c:a', 'aac'],
    beside: ['-f', 'lavfi', '-i', 'sine=duration=1'],
    refused: /no picture/,
  },
  {
    name: 'encrypted.mp4',
    encode: [
      ...h264,
      '-encryption_scheme',
      'cenc-aes-ctr',
      '-encryption_key',
      '76a6c65c5ea762046bd749a2e632ccbb',
      '-encryption_kid',
      'a7e61c373e219033c21091fa607bf3b8',
    ],
    refused: /is encrypted/,
  },
  { name: 'named-vvc.mp4', encode: h264, spoil: renamed('avc1', 'vvc1'), refused: /can’t decode VVC/ },
  {
    name: 'named-dolby-av1.mp4',
    encode: av1,
    spoil: renamed('av01', 'dav1'),
    refused: /can’t decode AV1 in Dolby Vision/,
  },
  { name: 'photo.gif', encode: [], refused: /is a photo/ },
];

const damaged: readonly OddFile[] = [
  ...(['mp4', 'mkv', 'avi', 'ts', 'mov'] as const).map(
    (ending): OddFile => ({
      name: `cut-half.${ending}`,
      pictures: 90,
      encode: /mp4|mov/.test(ending) ? [...h264, '-movflags', 'faststart'] : ending === 'avi' ? mpeg4 : h264,
      spoil: cutAt(0.5),
    }),
  ),
  { name: 'cut-late.mkv', pictures: 90, encode: h264, spoil: cutAt(0.93) },
  { name: 'cut-late.avi', pictures: 90, encode: mjpeg, spoil: cutAt(0.93) },
  { name: 'cut-webm.webm', pictures: 90, encode: vp9, spoil: cutAt(0.6) },
  {
    name: 'cut-hevc.mp4',
    pictures: 90,
    encode: [...hevc, '-movflags', 'faststart', '-tag:v', 'hvc1'],
    spoil: cutAt(0.6),
  },
  { name: 'cut-mpeg4.mp4', pictures: 90, encode: [...mpeg4, '-movflags', 'faststart'], spoil: cutAt(0.6) },
  {
    name: 'cut-fragments.mp4',
    pictures: 90,
    encode: [...h264, '-movflags', 'frag_keyframe+empty_moov'],
    spoil: cutAt(0.6),
  },
  { name: 'cut-index-behind.mp4', pictures: 60, encode: h264, spoil: cutAt(0.8), refused: /breaks off/ },
  { name: 'flipped.mp4', pictures: 60, encode: h264, spoil: flip(0.4, 300) },
  { name: 'flipped-late.mkv', pictures: 60, encode: h264, spoil: flip(0.7, 2000) },
  { name: 'flipped-ffv1.mkv', pictures: 60, encode: ['-c:v', 'ffv1', '-level', '3'], spoil: flip(0.4, 60) },
  { name: 'flipped-hevc.mkv', pictures: 60, encode: hevc, spoil: flip(0.4, 300) },
  { name: 'flipped-vp9.webm', pictures: 60, encode: vp9, spoil: flip(0.4, 300) },
  { name: 'flipped-av1.mp4', pictures: 60, encode: av1, spoil: flip(0.4, 300) },
  { name: 'flipped.ts', pictures: 60, encode: h264, spoil: flip(0.4, 300) },
  { name: 'flipped-mpeg4.avi', pictures: 60, encode: mpeg4, spoil: flip(0.4, 300) },
  { name: 'flipped-mjpeg.mov', pictures: 60, encode: mjpeg, spoil: flip(0.4, 300) },
];

export const oddFiles: readonly OddFile[] = [...sized, ...timed, ...coded, ...few, ...damaged];

/** Makes one of them in a folder; gives its path. */
export async function makeOddFile(file: OddFile, folder: string): Promise<string> {
  const tool = await findMediaTool('ffmpeg');
  if (!tool) throw new Error('odd files are made with ffmpeg');
  const [width, height] = file.size ?? [320, 180];
  const { pictures = 24, rate = '30' } = file;
  const target = path.join(folder, file.name);
  const ffmpeg = (...args: readonly string[]) => execa(tool.path, ['-v', 'error', '-y', ...args]);
  const numbered = width >= 160 ? [codeFilter(width, height)] : [];
  const filters = [`trim=end_frame=${pictures}`, ...numbered, ...(file.after ? [file.after] : [])].join(',');
  const film = file.soundOnly ? [] : ['-vf', filters, '-fps_mode', 'passthrough'];
  const source = ['-f', 'lavfi', '-i', `testsrc2=size=${width}x${height}:rate=${rate}`];
  await ffmpeg(...source, ...(file.beside ?? []), ...film, ...file.encode, target);
  if (file.remux) {
    const first = path.join(folder, `first-${file.name}`);
    await writeFile(first, await readFile(target));
    await ffmpeg('-i', first, '-c', 'copy', ...file.remux, target);
  }
  if (file.spoil) await writeFile(target, file.spoil(await readFile(target)));
  return target;
}
