const codecNames: readonly (readonly [RegExp, string])[] = [
  [/^(avc|h264)/, 'H.264'],
  [/^(hvc1|hev1|hevc)/, 'HEVC'],
  [/^(vp09|vp9)/, 'VP9'],
  [/^vp8/, 'VP8'],
  [/^(av01|av1)/, 'AV1'],
  [/^mjpeg/, 'MJPEG'],
  [/^mpeg2video/, 'MPEG-2'],
  [/^mpeg4/, 'MPEG-4 part 2'],
  [/^dvvideo/, 'DV'],
  [/^(prores|ap[a-z0-9]{2}$)/, 'ProRes'],
  [/^(vvc|vvi)/, 'VVC (H.266)'],
  [/^dav1/, 'AV1 in Dolby Vision'],
  [/^dv(h1|he|a1|av)$/, 'Dolby Vision'],
  [/^evc1/, 'EVC'],
  [/^apv1/, 'APV'],
  [/^(aprn|aprh)/, 'ProRes RAW'],
];

/** The codec's name in the trade; an unknown one by its own string. */
export const codecWords = (codec: string): string =>
  codecNames.find(([pattern]) => pattern.test(codec))?.[1] ?? codec;
