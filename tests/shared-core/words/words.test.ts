import { expect, expectTypeOf, it } from 'vitest';
import { words } from '#core/words/words';

const room = words({
  empty: 'No swims yet',
  adding: 'Add {name}',
  chosen: '{count, plural, one {# swim} other {# swims}} of {swimmer} chosen',
  film: '<b>Film</b> a repeat of {metres} m',
  share: '{share, number, percent} sent',
});

it('says a message with its arguments, and counts as English does', () => {
  expect(room('empty')).toBe('No swims yet');
  expect(room('adding', { name: 'lane 4.mp4' })).toBe('Add lane 4.mp4');
  expect(room('chosen', { count: 1, swimmer: 'Ada' })).toBe('1 swim of Ada chosen');
  expect(room('chosen', { count: 1200, swimmer: 'Ada' })).toBe('1,200 swims of Ada chosen');
  expect(room('share', { share: 0.25 })).toBe('25% sent');
});

it('hands over the pieces of a message that are drawn by its caller', () => {
  expect(room.parts('film', { metres: 25, b: (inside) => ({ bold: inside }) })).toEqual([
    { bold: ['Film'] },
    ' a repeat of 25 m',
  ]);
});

it('knows from the message what it must be given', () => {
  expectTypeOf(room<'chosen'>)
    .parameter(1)
    .toEqualTypeOf<{ count: number; swimmer: string | number }>();
  // @ts-expect-error a name is missing
  expect(() => room('adding')).toThrow('name');
  // @ts-expect-error there is no such message
  expect(room('nothing')).toBe('nothing');
});
