import { expect, it } from 'vitest';
import { withFollowed } from '#core/follow/with-followed';

it('fills a trace with surely followed points, in order, and never over a mark', () => {
  const marks = [
    { frame: 4, points: { toe: { x: 0, y: 4 } } },
    { frame: 0, points: { toe: { x: 0, y: 0 } } },
  ];
  const followed = [
    {
      landmark: 'toe' as const,
      frame: 3,
      points: [
        [0, 3, 1],
        [0, 99, 1],
        [0, 5, 0.5],
      ] as [number, number, number][],
    },
  ];
  const all = withFollowed(marks, followed, 'toe');
  expect(all.map(({ frame, points }) => [frame, points.toe?.y])).toEqual([
    [0, 0],
    [3, 3],
    [4, 4],
  ]);
  expect(withFollowed(marks, followed, 'hip')).toBe(marks);
});
