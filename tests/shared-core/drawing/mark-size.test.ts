import { describe, expect, it } from 'vitest';
import { labelsWithRoom, markShare } from '#core/drawing/mark-size';

const labels = ['elbow 153°', 'shoulder 149°', 'hip 193°', 'knee 169°', 'ankle 157°', 'trunk 6°'].map(
  (words) => ({
    words,
  }),
);

describe('marks on a small swimmer', () => {
  it('shrink with the swimmer between a size that can be told and the full one', () => {
    const shares = [30, 120, 240, 390, 900].map((height) => markShare(height, 13));
    expect(shares).toEqual([0.4, 0.4, 240 / 390, 1, 1]);
    expect(markShare(null, 13)).toBe(1);
  });

  it('have fewer labels, never smaller ones: those asked for first stay, in their places', () => {
    const words = (height: number | null) => labelsWithRoom(labels, height, 13).map((label) => label.words);
    expect(words(50)).toEqual([]);
    expect(words(60)).toEqual(['knee 169°']);
    expect(words(180)).toEqual(['hip 193°', 'knee 169°', 'trunk 6°']);
    expect(words(400)).toEqual(labels.map((label) => label.words));
    expect(words(null)).toHaveLength(6);
  });
});
