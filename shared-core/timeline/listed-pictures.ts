import { type Box, child, children, fits } from './movie-boxes';

/**
 * How many samples the longest list of a movie claims to hold: the counts in its tracks' decoding times (`stts`) and
 * showing times (`ctts`), where a few damaged bytes can claim four thousand million. Tracks without showing times are left
 * out: readers need no list of theirs, and sound may rightly have very many samples. `movie` is the content of the `moov`
 * box (ISO/IEC 14496-12, 8.6.1). Cost: the length of the lists, not what they claim.
 */
export function listedPictures(movie: Uint8Array): number {
  let most = 0;
  eachTable(movie, (view, table) => {
    const shown = child(view, table, 'ctts');
    const decoded = child(view, table, 'stts');
    if (shown) most = Math.max(most, sumOf(view, shown), decoded ? sumOf(view, decoded) : 0);
  });
  return most;
}

/**
 * Whether a movie lists samples in its `moov` box and announces fragments (`mvex`) that may list more (ISO/IEC 14496-12,
 * 8.8.1). Readers that take the box's own list for the whole lose what follows. `movie` is the content of the `moov` box.
 */
export function mayGoOnInFragments(movie: Uint8Array): boolean {
  let listed = false;
  const announced = eachTable(movie, (view, table) => {
    const decoded = child(view, table, 'stts');
    listed ||= decoded !== undefined && sumOf(view, decoded) > 0;
  });
  return announced && listed;
}

/** Whether a track of a movie is encrypted: its sample entries are named `encv` (ISO/IEC 14496-12, 8.12). */
export function isEncrypted(movie: Uint8Array): boolean {
  let encrypted = false;
  eachTable(movie, (view, table) => {
    const entries = child(view, table, 'stsd');
    // a version, flags and a count come before them
    if (entries && fits(view, entries, 8))
      encrypted ||= children(view, { ...entries, from: entries.from + 8 }).some(
        ({ name }) => name === 'encv',
      );
  });
  return encrypted;
}

/** Hands over the sample table of every track; tells whether fragments are announced. */
function eachTable(movie: Uint8Array, see: (view: DataView, table: Box) => void): boolean {
  const view = new DataView(movie.buffer, movie.byteOffset, movie.byteLength);
  const inside = children(view, { name: 'moov', from: 0, to: view.byteLength });
  for (const track of inside) {
    if (track.name !== 'trak') continue;
    let box: Box | undefined = track;
    for (const name of ['mdia', 'minf', 'stbl']) box = box && child(view, box, name);
    if (box) see(view, box);
  }
  return inside.some(({ name }) => name === 'mvex');
}

/** Sum of the first of each pair of numbers in a list with a version and a length before it. */
function sumOf(view: DataView, list: Box): number {
  if (!fits(view, list, 8)) return 0;
  const entries = view.getUint32(list.from + 4);
  let sum = 0;
  for (let n = 0; n < entries; n++) {
    const at = list.from + 8 + n * 8;
    if (at + 8 > view.byteLength) break;
    sum += view.getUint32(at);
  }
  return sum;
}
