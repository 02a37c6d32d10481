/** A mark of the feet: when, and whether it is the top of the kick. */
export interface KickMark {
  readonly time: number;
  readonly top: boolean;
  readonly x: number;
  readonly y: number;
}

/**
 * A curve through marked tops and bottoms in turn, level at each: it joins marks, it is no measurement. Two tops
 * or two bottoms in a row are not joined, so a missing mark shows as a gap.
 */
export function kickWavePath(marks: readonly KickMark[]): string {
  let path = '';
  marks.forEach((mark, index) => {
    const before = marks[index - 1];
    if (!before || before.top === mark.top) {
      path += `M${mark.x.toFixed(1)},${mark.y.toFixed(1)}`;
      return;
    }
    const middle = (before.x + mark.x) / 2;
    path += `C${middle.toFixed(1)},${before.y.toFixed(1)} ${middle.toFixed(1)},${mark.y.toFixed(1)} ${mark.x.toFixed(1)},${mark.y.toFixed(1)}`;
  });
  return path;
}
