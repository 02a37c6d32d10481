import type { MadeClip } from './harness/make-clips';

const x264 = (params: string): string[] => [
  '-c:v',
  'libx264',
  '-preset',
  'veryfast',
  '-crf',
  '23',
  '-x264-params',
  params,
];
const plain = x264('keyint=30:scenecut=0:bframes=3');
const base = { width: 640, height: 360, rate: 30, pictures: 150, extension: 'mp4', encode: plain };

/** Small clips (rotate-n: to be turned clockwise by n degrees; ffmpeg's own tag counts the other way), each with one property that players get wrong. */
export const propertyClips: readonly MadeClip[] = [
  { ...base, name: 'even-rate-b-frames' },
  {
    ...base,
    name: 'variable-rate',
    after: "settb=1/90000,setpts='(N/30+0.012*sin(N*1.7)+0.4*gt(N,70))/TB'",
    encode: [...plain, '-enc_time_base', '1:90000', '-video_track_timescale', '90000'],
  },
  {
    ...base,
    name: 'two-pictures-at-one-time',
    after: "settb=1/1000,setpts='if(eq(N,20),19,if(eq(N,101),100,N))*33'",
    encode: [...plain, '-enc_time_base', '1:1000', '-video_track_timescale', '1000'],
    twins: [20, 101],
  },
  { ...base, name: 'open-groups', encode: x264('keyint=24:min-keyint=24:scenecut=0:bframes=3:open-gop=1') },
  {
    ...base,
    name: 'one-group-of-250',
    pictures: 260,
    encode: x264('keyint=250:min-keyint=250:scenecut=0:bframes=3'),
  },
  { ...base, name: 'only-key-pictures', encode: x264('keyint=1') },
  { ...base, name: 'rotate-270', after: 'transpose=1', remux: { output: ['-metadata:s:v', 'rotate=90'] } },
  { ...base, name: 'rotate-180', after: 'hflip,vflip', remux: { output: ['-metadata:s:v', 'rotate=180'] } },
  { ...base, name: 'rotate-90', after: 'transpose=2', remux: { output: ['-metadata:s:v', 'rotate=270'] } },
  { ...base, name: 'mirrored', after: 'hflip', matrix: [-1, 0, 0, 1] },
  { ...base, name: 'pixels-2-to-1', width: 320, after: 'setsar=2/1' },
  // all three at once: the stored picture is the shown one with its axes exchanged, its pixels twice as high as wide
  {
    ...base,
    name: 'turned-mirrored-and-pixels-2-to-1',
    width: 320,
    after: 'setsar=2/1,transpose=cclock_flip',
    matrix: [0, 1, 1, 0],
  },
  { ...base, name: 'starts-at-10-s', remux: { output: ['-output_ts_offset', '10'] } },
  { ...base, name: 'cut-at-the-start-by-edit-list', remux: { input: ['-ss', '2.2'], output: [] } },
  { ...base, name: 'cut-at-both-ends-by-edit-list', remux: { input: ['-ss', '1.4'], output: ['-t', '1.7'] } },
  { ...base, name: 'trimmed-at-the-end-by-edit-list', editLength: 3100 },
  {
    ...base,
    name: 'capture-rate-tag',
    remux: { output: ['-movflags', 'use_metadata_tags', '-metadata', 'com.android.capture.fps=240'] },
  },
  {
    ...base,
    name: 'quick-film-of-a-phone',
    rate: 240,
    pictures: 60,
    extension: 'mov',
    remux: {
      output: [
        ...['-movflags', 'use_metadata_tags'],
        ...['-metadata', 'com.apple.quicktime.full-frame-rate-playback-intent=0'],
      ],
    },
  },
  { ...base, name: 'index-at-the-front', remux: { output: ['-movflags', 'faststart'] } },
  { ...base, name: 'fragmented', remux: { output: ['-movflags', 'frag_keyframe+empty_moov'] } },
  { ...base, name: 'quicktime', extension: 'mov' },
  { ...base, name: 'matroska', extension: 'mkv' },
  { ...base, name: 'transport-stream', extension: 'ts' },
  {
    ...base,
    name: 'vp9',
    extension: 'webm',
    encode: [
      '-c:v',
      'libvpx-vp9',
      '-deadline',
      'realtime',
      '-cpu-used',
      '8',
      '-b:v',
      '1M',
      '-g',
      '40',
      '-auto-alt-ref',
      '1',
      '-lag-in-frames',
      '16',
    ],
  },
  {
    ...base,
    name: 'vp8',
    extension: 'webm',
    encode: ['-c:v', 'libvpx', '-deadline', 'realtime', '-cpu-used', '8', '-b:v', '1M', '-g', '40'],
  },
  {
    ...base,
    name: 'av1',
    pictures: 60,
    encode: ['-c:v', 'libaom-av1', '-cpu-used', '8', '-usage', 'realtime', '-b:v', '1M', '-g', '30'],
  },
  { ...base, name: 'motion-jpeg', extension: 'mov', encode: ['-c:v', 'mjpeg', '-q:v', '3'] },
  { ...base, name: 'ten-bit', encode: ['-pix_fmt', 'yuv420p10le', ...plain] },
  { ...base, name: '240-a-second', rate: 240, pictures: 300, encode: x264('keyint=120:scenecut=0') },
];

/** More than three million pixels: held at half size beside the whole. */
export const largeClip: MadeClip = {
  ...{ ...base, name: 'larger-than-a-screen', width: 2304, height: 1304, pictures: 24 },
  encode: [...['-c:v', 'libx264', '-preset', 'ultrafast', '-crf', '30'], '-g', '12'],
};
