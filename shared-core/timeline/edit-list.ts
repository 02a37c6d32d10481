import { type Box, child, children, fits } from './movie-boxes';

/**
 * Where a track's edit list ends the showing, in the track's ticks from the start of the presentation; infinity when
 * the list leaves that open or there is none. A trimmed phone clip keeps pictures after that end in the file.
 *
 * `movie` is the content of the file's `moov` box. Read is the first edit that shows media, with the empty edits
 * before it as delay (ISO/IEC 14496-12, 8.6.6); durations there are in the movie's clock and are rounded to the
 * track's. Cost: a walk over the headers. Damaged boxes end the walk where they are.
 */
export function editEnd(movie: Uint8Array, trackId: number): number {
  const view = new DataView(movie.buffer, movie.byteOffset, movie.byteLength);
  const found = editsOf(view, trackId);
  if (!found) return Number.POSITIVE_INFINITY;
  const end = endOfFirstEdit(found.edits);
  return end === null ? Number.POSITIVE_INFINITY : Math.round((end * found.trackScale) / found.movieScale);
}

/**
 * Whether a track's edit list puts its pictures together anew: more than one edit shows media (a cut in the middle, a
 * stretch shown twice), or media is shown faster or slower than it is stored (a media rate other than 1; 0 holds one
 * picture). Such a list can't be followed by leaving out what lies before its start and after its end.
 */
export function isRearranged(movie: Uint8Array, trackId: number): boolean {
  const view = new DataView(movie.buffer, movie.byteOffset, movie.byteLength);
  const shown = editsOf(view, trackId)?.edits.filter(({ mediaTime }) => mediaTime !== -1) ?? [];
  return shown.length > 1 || shown.some(({ rate }) => rate !== 1);
}

interface Edit {
  /** In the movie's clock; 0 where the edit has no end of its own. */
  readonly duration: number;
  /** Start in the track's clock; -1 shows nothing. */
  readonly mediaTime: number;
  readonly rate: number;
}
interface Edits {
  readonly edits: readonly Edit[];
  readonly movieScale: number;
  readonly trackScale: number;
}

/** A track's edit list and the clocks it counts in; null where there is none to read. */
function editsOf(view: DataView, trackId: number): Edits | null {
  const whole: Box = { name: 'moov', from: 0, to: view.byteLength };
  const header = child(view, whole, 'mvhd');
  const movieScale = header ? clockOf(view, header) : null;
  const track = children(view, whole).find((box) => box.name === 'trak' && idOf(view, box) === trackId);
  if (movieScale === null || !track) return null;
  const media = child(view, track, 'mdia');
  const mediaHeader = media && child(view, media, 'mdhd');
  const trackScale = mediaHeader ? clockOf(view, mediaHeader) : null;
  const box = child(view, track, 'edts');
  const list = box && child(view, box, 'elst');
  return list && trackScale !== null ? { edits: readEdits(view, list), movieScale, trackScale } : null;
}

function readEdits(view: DataView, list: Box): Edit[] {
  const long = fits(view, list, 8) && view.getUint8(list.from) === 1;
  const size = long ? 20 : 12;
  const edits: Edit[] = [];
  for (let at = list.from + 8; at + size <= list.to; at += size) {
    edits.push({
      duration: long ? Number(view.getBigUint64(at)) : view.getUint32(at),
      mediaTime: long ? Number(view.getBigInt64(at + 8)) : view.getInt32(at + 4),
      // a whole and a 65,536th part, 16 bits each
      rate: view.getInt32(at + size - 4) / 65_536,
    });
  }
  return edits;
}

/** End of the first edit that shows media, in the movie's clock; null when it has no end. */
function endOfFirstEdit(edits: readonly Edit[]): number | null {
  let delay = 0;
  for (const { duration, mediaTime } of edits) {
    if (mediaTime !== -1) return duration > 0 ? delay + duration : null;
    delay += duration;
  }
  return null;
}

/** Ticks a second of an `mvhd` or `mdhd` box; null when there is none to read. */
function clockOf(view: DataView, box: Box): number | null {
  const at = fits(view, box, 24) && view.getUint8(box.from) === 1 ? 20 : 12;
  if (!fits(view, box, at + 4)) return null;
  const clock = view.getUint32(box.from + at);
  return clock > 0 ? clock : null;
}

function idOf(view: DataView, track: Box): number | null {
  const box = child(view, track, 'tkhd');
  if (!box || !fits(view, box, 24)) return null;
  return view.getUint32(box.from + (view.getUint8(box.from) === 1 ? 20 : 12));
}
