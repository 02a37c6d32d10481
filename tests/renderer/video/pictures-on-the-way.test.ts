import { expect, it } from 'vitest';
import { createPicturesOnTheWay } from '../../../renderer/video/pictures-on-the-way';

/** A decoder fed with the group from 12 (its third picture leans on the fourth), then with the group before it. */
function twoRuns() {
  const way = createPicturesOnTheWay();
  way.begin(7);
  for (const rank of [12, 13, 15, 14]) way.feed(rank);
  way.begin(8);
  for (const rank of [4, 5, 6]) way.feed(rank);
  return way;
}

it('tells each picture of two runs in a row, in showing order, though numbers go backward', () => {
  const way = twoRuns();
  const out = (
    [
      [7, 12],
      [7, 13],
      [7, 14],
      [7, 15],
      [8, 4],
      [8, 5],
    ] as const
  ).map(([run, rank]) => way.take(run, rank, false));
  expect(out.map(({ rank }) => rank)).toEqual([12, 13, 14, 15, 4, 5]);
  expect(out.flatMap(({ passedOver }) => passedOver)).toEqual([]);
  expect([way.has(6), way.has(15), way.all()]).toEqual([true, false, [6]]);
});

it('knows what was passed over: earlier ones of the same run, and all that is left of the run before', () => {
  const way = twoRuns();
  expect(way.take(7, 14, false)).toEqual({ rank: 14, passedOver: [12, 13] });
  expect(way.take(8, 5, false)).toEqual({ rank: 5, passedOver: [15, 4] });
});

it('is not waiting for a picture that leads a group it does not belong to, nor for one of a run given up', () => {
  const way = twoRuns();
  expect(way.take(7, 11, false)).toEqual({ rank: null, passedOver: [] });
  expect(way.forget()).toEqual([12, 13, 14, 15, 4, 5, 6]);
  way.begin(9);
  expect(way.take(7, 13, false)).toEqual({ rank: null, passedOver: [] });
  expect(way.all()).toEqual([]);
});

it('takes the first one waited for where the decoder’s order is all there is to go by', () => {
  expect(twoRuns().take(7, 99, true)).toEqual({ rank: 12, passedOver: [] });
});
