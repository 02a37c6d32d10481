import { describe, expect, it } from 'vitest';
import { listedPictures, mayGoOnInFragments } from '#core/timeline/listed-pictures';

const number32 = (value: number): number[] => [24, 16, 8, 0].map((shift) => (value >>> shift) & 255);
const box = (name: string, ...content: number[][]): number[] => {
  const flat = content.flat();
  return [...number32(flat.length + 8), ...[...name].map((letter) => letter.charCodeAt(0)), ...flat];
};
const list = (name: string, counts: readonly number[]): number[] =>
  box(
    name,
    number32(0),
    number32(counts.length),
    ...counts.map((count) => [...number32(count), ...number32(512)]),
  );
const track = (...lists: number[][]): number[] =>
  box('trak', box('tkhd', number32(0)), box('mdia', box('minf', box('stbl', ...lists))));
const movie = (...tracks: number[][]): Uint8Array =>
  Uint8Array.from([...box('mvhd', number32(0)), ...tracks.flat()]);

describe('pictures that a movie lists', () => {
  it('are the counts of its longest list, added up', () => {
    expect(listedPictures(movie(track(list('stts', [10, 5]), list('ctts', [8, 7]))))).toBe(15);
    expect(listedPictures(movie(track(list('stts', [3]), list('ctts', [9]))))).toBe(9);
  });

  it('are told as claimed, however few bytes claim them', () => {
    const claimed = movie(track(list('stts', [0xffff_ffff]), list('ctts', [30])));
    expect(listedPictures(claimed)).toBe(0xffff_ffff);
  });

  it('are not asked of a track without showing times: an hour of sound has 172,800,000 samples', () => {
    expect(listedPictures(movie(track(list('stts', [172_800_000]))))).toBe(0);
  });

  it('may go on in fragments only where some are listed and fragments are announced', () => {
    const fragments = box('mvex', box('trex', number32(0)));
    expect(mayGoOnInFragments(movie(track(list('stts', [30])), fragments))).toBe(true);
    expect(mayGoOnInFragments(movie(track(list('stts', [])), fragments))).toBe(false);
    expect(mayGoOnInFragments(movie(track(list('stts', [30]))))).toBe(false);
    expect(mayGoOnInFragments(new Uint8Array())).toBe(false);
  });

  it('are none in any cut-off movie that holds no list, and counting never throws', () => {
    const whole = movie(track(list('stts', [10]), list('ctts', [10])));
    for (let end = 0; end <= whole.length; end++)
      expect(listedPictures(whole.subarray(0, end))).toBeLessThanOrEqual(10);
    // a list that says it is longer than the file is counted to the end of the file
    const long = track([...box('ctts', number32(0), number32(1_000_000), number32(4), number32(0))]);
    expect(listedPictures(movie(long))).toBe(4);
  });
});
