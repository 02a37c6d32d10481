import { IntlMessageFormat } from 'intl-messageformat';
import { expect, it } from 'vitest';
import { pseudoMessage, pseudoText } from '#core/words/pseudo';

const said = (message: string, given: Record<string, unknown>) =>
  new IntlMessageFormat(pseudoMessage(new IntlMessageFormat(message, 'en').getAst()), 'en').format(
    given as Record<string, string>,
  );

it('makes a text at least 40 % longer, whatever its letters, and brackets it', () => {
  for (const text of ['Add swims', 'Hmm', 'OK', 'Every file in the bundle is whole']) {
    const pseudo = pseudoText(text);
    expect(pseudo).toMatch(/^\[.*\]$/);
    expect([...pseudo].length - 2).toBeGreaterThanOrEqual(text.length * 1.4);
    expect(pseudo).not.toMatch(/[A-Za-z]/);
  }
});

it('keeps arguments, plurals and marked pieces of a message', () => {
  expect(said('Add {name}', { name: 'Ada' })).toBe('[ÁÁđđ· Ada]');
  expect(said('{n, plural, one {# kick} other {# kicks}}', { n: 2 })).toBe('[2 ķííçķš·]');
  expect(said('<b>No</b> one', { b: (inside: string[]) => inside.join('') })).toBe('[Ñóó óóñéé]');
});
