import { expect, it } from 'vitest';
import { walkWay } from '../../../renderer/video/walk-way';

it('a step of one or ten frames is a walk, a mark far off is a jump', () => {
  expect([walkWay(5, 6), walkWay(20, 10), walkWay(7, 7), walkWay(0, 200), walkWay(200, 20)]).toEqual([
    1, -1, 0, 0, 0,
  ]);
});
