import { describe, expect, it } from 'vitest';
import { addressOf, routeOf, shelfRoute } from '../../../renderer/ui/use-route';

describe('an address', () => {
  it.each([
    ['#/bench/swim-1', { screen: 'bench', ids: ['swim-1'] }],
    ['#/pair/a/b', { screen: 'pair', ids: ['a', 'b'] }],
    ['#/sets', { screen: 'sets', ids: [] }],
  ])('%s names a screen and its ids, and is what the route is written as', (address, route) => {
    expect(routeOf(address)).toEqual(route);
    expect(addressOf(route)).toBe(address);
  });

  it.each(['', '#', '#/', '#/../x', '#/bench/a b', '#/pair/a/', 'bench/a', '#/a/b/c/d/e'])(
    '%j leads to the shelf',
    (address) => expect(routeOf(address)).toEqual(shelfRoute),
  );
});
