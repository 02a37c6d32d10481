import type { ProbedTrack } from './probe-tracks';

/** Longest side of a copy: pictures larger than this are made smaller, or stepping would be slow again. */
const longestSide = 2048;
const largeBecomes = 1920;

/** How a working copy is coded: H.264 in groups of 12 without pictures that lean forward, on the swim's own clock. */
export function copyCoding(timing: readonly string[], ticksPerSecond: number): readonly string[] {
  return [
    ...[...timing, '-enc_time_base', `1:${ticksPerSecond}`],
    ...['-c:v', 'libx264', '-preset', 'ultrafast', '-crf', '21', '-pix_fmt', 'yuv420p'],
    ...['-g', '12', '-bf', '0', '-sc_threshold', '0'],
  ];
}

/** Even sides, as the coding needs; large pictures smaller. After turning, which ffmpeg does before any filter. */
export function copySize({ codedWidth, codedHeight, rotation }: ProbedTrack): readonly string[] {
  const [width, height] = rotation % 180 === 0 ? [codedWidth, codedHeight] : [codedHeight, codedWidth];
  const longest = Math.max(width, height);
  const share = longest > longestSide ? largeBecomes / longest : 1;
  const even = (side: number): number => Math.max(2, Math.round((side * share) / 2) * 2);
  if (even(width) === width && even(height) === height) return [];
  return [`scale=${even(width)}:${even(height)}`];
}
