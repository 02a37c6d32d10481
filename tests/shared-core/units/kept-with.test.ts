import { expect, it } from 'vitest';
import { keptWith } from '#core/units/kept-with';

it('works out once for one object, and again for another that looks the same', () => {
  let made = 0;
  const count = keptWith((of: readonly number[]) => {
    made += 1;
    return of.length;
  });
  const [one, same] = [
    [1, 2],
    [1, 2],
  ];
  expect([count(one), count(one), count(same), made]).toEqual([2, 2, 2, 2]);
});

it('keeps null and undefined like any other answer', () => {
  for (const nothing of [null, undefined]) {
    let made = 0;
    const of = keptWith(() => {
      made += 1;
      return nothing;
    });
    const key = {};
    expect([of(key), of(key), made]).toEqual([nothing, nothing, 1]);
  }
});

it('does not keep what threw', () => {
  let made = 0;
  const of = keptWith(() => {
    made += 1;
    if (made === 1) throw new Error('not yet');
    return 'there';
  });
  const key = {};
  expect(() => of(key)).toThrow('not yet');
  expect(of(key)).toBe('there');
});
