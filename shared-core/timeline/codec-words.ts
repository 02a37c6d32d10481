import { clipsWords } from '../words/clips';

const codecNames: readonly (readonly [RegExp, string])[] = [
  [/^(avc|h264)/, 'H.264'],
  [/^(hvc1|hev1|hevc)/, 'HEVC'],
  [/^(vp09|vp9)/, 'VP9'],
  [/^vp8/, 'VP8'],
  [/^(av01|av1)/, 'AV1'],
  [/^mjpeg/, 'MJPEG'],
  [/^mpeg2video/, 'MPEG-2'],
  [/^mpeg4/, clipsWords('mpeg4Part2')],
  [/^dvvideo/, 'DV'],
  [/^(prores|ap[a-z0-9]{2}$)/, 'ProRes'],
  [/^(vvc|vvi)/, clipsWords('vvcH266')],
  [/^dav1/, clipsWords('av1DolbyVision')],
  [/^dv(h1|he|a1|av)$/, clipsWords('dolbyVision')],
  [/^evc1/, 'EVC'],
  [/^apv1/, 'APV'],
  [/^(aprn|aprh)/, clipsWords('proresRaw')],
];

/** The codec's name in the trade; an unknown one by its own string. */
export const codecWords = (codec: string): string =>
  codecNames.find(([pattern]) => pattern.test(codec))?.[1] ?? codec;
