import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { safeFileName } from '#core/exporting/safe-file-name';

describe('the name of a still', () => {
  it('reads like what it shows', () => {
    expect(safeFileName(['Pip', '2024-05-14', 'Kick top', 'frame 143'], 'png')).toBe(
      'Pip - 2024-05-14 - Kick top - frame 143.png',
    );
  });

  it('leaves out separators and signs with a meaning', () => {
    expect(safeFileName(['a/b\\c:d*e?f"g<h>i|j'], 'png')).toBe('a b c d e f g h i j.png');
    expect(safeFileName(['../..'], 'png')).not.toContain('/');
  });

  it('is never a device name or empty', () => {
    expect(safeFileName(['CON'], 'png')).toBe('still CON.png');
    expect(safeFileName(['...'], 'png')).toBe('still.png');
  });

  it('is taken by every system, whatever the coach typed', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'grapheme', maxLength: 200 }), { maxLength: 4 }), (parts) => {
        const name = safeFileName(parts, 'png');
        expect(name).toMatch(/^[^<>:"/\\|?*\p{Cc}]+\.png$/u);
        expect(name).not.toMatch(/^[. ]|[. ]\.png$/);
        expect([...name].length).toBeLessThanOrEqual(130);
      }),
    );
  });
});
