import { describe, expect, it } from 'vitest';
import { keyWords } from '../../../renderer/ui/key-words';

describe('key words', () => {
  it.each([
    ['q', 'Q'],
    ['$mod+z', 'Ctrl Z'],
    ['Shift+ArrowLeft', 'Shift ←'],
    ['+', '+'],
    ['Shift++', 'Shift +'],
    ['Shift+?', '?'],
    ['Space', 'Space'],
  ])('prints %s as %s', (pattern, words) => {
    expect(keyWords(pattern, false)).toBe(words);
  });

  it('prints the Mac’s own modifier', () => {
    expect(keyWords('$mod+Shift+z', true)).toBe('⌘ Shift Z');
  });
});
