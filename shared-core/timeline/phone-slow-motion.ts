import { type Box, child, fits } from './movie-boxes';

/**
 * Pictures a second that a phone filmed, from the `smta` box that Samsung's slow motion leaves in an MP4's user data; null
 * where there is none, or where its recording mode is not one of slow motion. The film itself is stored slowed.
 *
 * `movie` is the content of the file's `moov` box. Source: androidx/media, `SmtaAtomUtil` and `SegmentSpeedProvider`
 * (Apache-2.0): modes 12 and 13 filmed 240 and 120 a second, mode 21 names its rate (16.16) in `srfr`; what is stored plays
 * at 30 a second, so that real time is that many times quicker.
 */
export function phoneCapturedRate(movie: Uint8Array): number | null {
  const view = new DataView(movie.buffer, movie.byteOffset, movie.byteLength);
  const whole: Box = { name: 'moov', from: 0, to: movie.byteLength };
  const data = child(view, whole, 'udta');
  const told = data && child(view, data, 'smta');
  if (!told) return null;
  // a version and flags come before the boxes in it
  const inside = { ...told, from: Math.min(told.from + 4, told.to) };
  const author = child(view, inside, 'saut');
  if (!author || !fits(view, author, 8)) return null;
  // pairs of key and value in any order; key 0 is the recording mode
  const mode = [4, 6]
    .filter((place) => view.getUint8(author.from + place) === 0)
    .map((place) => view.getUint8(author.from + place + 1))[0];
  if (mode === 12) return 240;
  if (mode === 13) return 120;
  const rate = mode === 21 ? child(view, inside, 'srfr') : undefined;
  return rate && fits(view, rate, 4) ? view.getUint32(rate.from) / 65_536 : null;
}
