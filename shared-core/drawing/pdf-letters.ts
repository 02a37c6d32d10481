import { create, type Font } from 'fontkit';
import type { MeasureWords } from './drawing-op';

/** The two weights of one family of letters, as the bytes of their files. */
export interface LetterBytes {
  readonly 400: Uint8Array;
  readonly 600: Uint8Array;
}

/** Letters opened for measuring, the same numbers wherever they are drawn. */
export interface Letters {
  readonly bytes: LetterBytes;
  /** Width without kerning, as the PDF sets them. */
  readonly measure: MeasureWords;
  /** The letters of a text that this family has no shape for, each once. */
  missing(words: string): readonly string[];
}

/** Throws when the bytes are no single font: they are the app's own. */
export function openLetters(bytes: LetterBytes): Letters {
  const fonts: Readonly<Record<400 | 600, Font>> = { 400: single(bytes[400]), 600: single(bytes[600]) };
  const widths: Readonly<Record<400 | 600, Map<number, number>>> = { 400: new Map(), 600: new Map() };
  const advance = (weight: 400 | 600, codePoint: number): number => {
    const known = widths[weight].get(codePoint);
    if (known !== undefined) return known;
    const font = fonts[weight];
    const width = font.glyphForCodePoint(codePoint).advanceWidth / font.unitsPerEm;
    widths[weight].set(codePoint, width);
    return width;
  };
  return {
    bytes,
    measure: (words, size, weight) =>
      [...words].reduce((sum, letter) => sum + advance(weight, letter.codePointAt(0) ?? 32), 0) * size,
    missing: (words) => [
      ...new Set(
        [...words].filter((letter) => !fonts[400].hasGlyphForCodePoint(letter.codePointAt(0) ?? 32)),
      ),
    ],
  };
}

function single(bytes: Uint8Array): Font {
  const found = create(bytes as Parameters<typeof create>[0]);
  if (!('glyphForCodePoint' in found)) throw new Error('a file of letters holds one font');
  return found;
}
