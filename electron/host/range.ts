/** A byte range of a file: both ends included. */
export interface ByteRange {
  readonly start: number;
  readonly end: number;
}

/** Reads a Range header of one range: null when there is none or it is not understood, 'unsatisfiable' when outside. */
export function parseRange(
  header: string | null | undefined,
  size: number,
): ByteRange | 'unsatisfiable' | null {
  const match = /^bytes=(\d*)-(\d*)$/.exec(header ?? '');
  if (!match || (match[1] === '' && match[2] === '')) return null;
  const [, from = '', to = ''] = match;
  if (from === '') {
    const last = Math.min(Number(to), size);
    return last === 0 ? 'unsatisfiable' : { start: size - last, end: size - 1 };
  }
  const start = Number(from);
  const end = to === '' ? size - 1 : Math.min(Number(to), size - 1);
  return start >= size || end < start ? 'unsatisfiable' : { start, end };
}
