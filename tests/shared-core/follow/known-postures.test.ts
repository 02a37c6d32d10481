import { expect, it } from 'vitest';
import { knownPostures } from '#core/follow/known-postures';
import { assumedMarkingError } from '#core/uncertainty/assumed-marking-error';

const error = assumedMarkingError(1000);
const marks = [
  { frame: 0, points: { toe: { x: 1, y: 1 } }, hidden: [] },
  { frame: 2, points: {}, hidden: ['toe' as const] },
  { frame: 4, points: { toe: { x: 5, y: 5 } }, hidden: [] },
];
const followed = [
  {
    landmark: 'toe' as const,
    frame: 1,
    points: [
      [20, 20, 0.99],
      [30, 30, 0.99],
      [40, 40, 0.5],
      [50, 50, 0.99],
    ] as [number, number, number][],
  },
];

it('fills in sure followed points, and never moves, covers or uncovers what the coach said', () => {
  const { postures } = knownPostures({ postures: marks, seen: [], followed }, error, 500);
  expect(postures.map(({ frame, points }) => [frame, points.toe?.x ?? null])).toEqual([
    [0, 1],
    [1, 20],
    [2, null],
    [4, 5],
  ]);
});

it('says that followed points are less sure than marks, and leaves a swim without them as it is', () => {
  const { followedSd, followed: names } = knownPostures({ postures: marks, seen: [], followed }, error, 500);
  expect(followedSd.toe).toBeGreaterThan(error.landmarkSd.toe);
  expect(followedSd.hip).toBe(error.followedSd.hip);
  expect([...names]).toEqual([[1, ['toe']]]);
  const without = knownPostures({ postures: marks, seen: [], followed: [] }, error, 500);
  expect([without.followedSd, without.followed.size]).toEqual([error.followedSd, 0]);
});

it('takes a followed point to err as its confidence says, or as re-marking found where that is more', () => {
  const sdOf = (bodyLength: number, measured: number): number =>
    knownPostures(
      { postures: marks, followed, seen: [] },
      { ...error, followedSd: { ...error.followedSd, toe: measured } },
      bodyLength,
    ).followedSd.toe;
  // 0.99: 2 % / √(2 ln 100) = 0.659 % of the body, warned 1.5 times over: 0.439 %, held by 5 %: 0.4376 %
  expect(sdOf(2000, 1)).toBeCloseTo(8.75, 2);
  expect(sdOf(2000, 15)).toBe(15);
});
