import { describe, expect, it } from 'vitest';
import { editEnd, isRearranged } from '#core/timeline/edit-list';

const number32 = (value: number): number[] => [24, 16, 8, 0].map((shift) => (value >> shift) & 255);
const box = (name: string, ...content: number[][]): number[] => {
  const flat = content.flat();
  return [...number32(flat.length + 8), ...[...name].map((letter) => letter.charCodeAt(0)), ...flat];
};
const clock = (ticks: number): number[] => [
  ...new Array(12).fill(0),
  ...number32(ticks),
  ...new Array(12).fill(0),
];
const list = (...edits: (readonly [number, number])[]): number[] =>
  box(
    'edts',
    box(
      'elst',
      number32(0),
      number32(edits.length),
      ...edits.map(([length, from]) => [...number32(length), ...number32(from), 0, 1, 0, 0]),
    ),
  );
const track = (id: number, edits: number[], ticks = 15_360): number[] =>
  box('trak', box('tkhd', clock(id)), edits, box('mdia', box('mdhd', clock(ticks))));
const movie = (...tracks: number[][]): Uint8Array =>
  Uint8Array.from([...box('mvhd', clock(1000)), ...tracks.flat()]);

describe('end of an edit list', () => {
  it('is the length of the edit in the track’s clock', () => {
    // 3.1 s at 15360 ticks a second
    expect(editEnd(movie(track(1, list([3100, 1024]))), 1)).toBe(47_616);
  });

  it('comes after the empty edits that delay the film', () => {
    expect(editEnd(movie(track(1, list([2000, -1], [3000, 0]))), 1)).toBe(5 * 15_360);
  });

  it('is open without a list, without a length, and for a track that is not there', () => {
    expect(editEnd(movie(track(1, [])), 1)).toBe(Number.POSITIVE_INFINITY);
    expect(editEnd(movie(track(1, list([0, 512]))), 1)).toBe(Number.POSITIVE_INFINITY);
    expect(editEnd(movie(track(1, list([3100, 0]))), 2)).toBe(Number.POSITIVE_INFINITY);
  });

  it('is taken from the track asked for', () => {
    const two = movie(track(1, list([9000, 0])), track(2, list([500, 0]), 90_000));
    expect(editEnd(two, 2)).toBe(45_000);
  });

  it('is open in any damaged header, and never throws', () => {
    const whole = movie(track(1, list([3100, 1024])));
    for (let cut = 0; cut < whole.length; cut++) {
      expect(editEnd(whole.subarray(0, cut), 1)).toBe(Number.POSITIVE_INFINITY);
    }
    for (let place = 0; place < whole.length; place++) {
      for (const value of [0, 1, 127, 255]) {
        const damaged = whole.slice();
        damaged[place] = value;
        expect(editEnd(damaged, 1)).not.toBeNaN();
      }
    }
  });
});

describe('an edit list that puts pictures together anew', () => {
  it('is one with several edits that show media, or with media faster or held', () => {
    expect(isRearranged(movie(track(1, list([1000, 0], [2000, 46_080]))), 1)).toBe(true);
    const held = movie(track(1, list([1000, 0])));
    const rate = held.length - 4 - box('mdia', box('mdhd', clock(1))).length;
    held.set([0, 0], rate);
    expect(isRearranged(held, 1)).toBe(true);
  });

  it('is not a delay, a trim, a missing list or a damaged one', () => {
    expect(isRearranged(movie(track(1, list([2000, -1], [3000, 512]))), 1)).toBe(false);
    expect(isRearranged(movie(track(1, list([3000, 512]))), 1)).toBe(false);
    expect(isRearranged(movie(track(1, [])), 1)).toBe(false);
    expect(isRearranged(movie(track(1, list([1000, 0], [2000, 9]))).subarray(0, 60), 1)).toBe(false);
  });
});
