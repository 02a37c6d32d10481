import { create, type Font } from 'fontkit';
import type { DrawingOp, MeasureWords } from './drawing-op';
import { moreLetters, partOutline, partWidth, wordParts } from './letter-outlines';

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
  /** The same drawing with words that need letters of other files cut into words and outlines. */
  outlined(drawing: readonly DrawingOp[]): readonly DrawingOp[];
  /** The letters of a text that no file has a shape for, each once. */
  missing(words: string): readonly string[];
}

/**
 * Opens the page's family, and files of other scripts in the order they are to be asked. Throws when the bytes are no
 * single font: they are the app's own.
 */
export function openLetters(bytes: LetterBytes, others: readonly Uint8Array[] = []): Letters {
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
  const more = others.map((each) => moreLetters(single(each)));
  const isOwn = (codePoint: number): boolean => fonts[400].hasGlyphForCodePoint(codePoint);
  const own: MeasureWords = (words, size, weight) =>
    [...words].reduce((sum, letter) => sum + advance(weight, letter.codePointAt(0) ?? 32), 0) * size;
  const isPlain = (words: string): boolean =>
    more.length === 0 || [...words].every((letter) => isOwn(letter.codePointAt(0) ?? 32));
  const measure: MeasureWords = (words, size, weight) =>
    isPlain(words)
      ? own(words, size, weight)
      : wordParts(words, isOwn, more).reduce(
          (sum, part) =>
            sum + (part.more ? partWidth(part.more, part.text, size) : own(part.text, size, weight)),
          0,
        );
  const outlined = (op: Extract<DrawingOp, { op: 'words' }>): readonly DrawingOp[] => {
    const width = measure(op.words, op.size, op.weight);
    let x = op.at.x - (op.align === 'centre' ? width / 2 : op.align === 'right' ? width : 0);
    return wordParts(op.words, isOwn, more).map((part): DrawingOp => {
      const at = { x, y: op.at.y };
      x += measure(part.text, op.size, op.weight);
      return part.more
        ? partOutline(part.more, part.text, at, op)
        : { ...op, words: part.text, at, align: 'left' };
    });
  };
  return {
    bytes,
    measure,
    outlined: (drawing) =>
      drawing.flatMap((op) => (op.op === 'words' && !isPlain(op.words) ? outlined(op) : [op])),
    missing: (words) => [
      ...new Set(
        [...words].filter((letter) => {
          const code = letter.codePointAt(0) ?? 32;
          return !isOwn(code) && more.every(({ font }) => !font.hasGlyphForCodePoint(code));
        }),
      ),
    ],
  };
}

function single(bytes: Uint8Array): Font {
  const found = create(bytes as Parameters<typeof create>[0]);
  if (!('glyphForCodePoint' in found)) throw new Error('a file of letters holds one font');
  return found;
}
