import type { Font } from 'fontkit';
import type { Point } from '../units/point';
import type { DrawingOp } from './drawing-op';

/** Letters beyond the page's own family: one file of a script, or of a part of one. */
export interface MoreLetters {
  readonly font: Font;
  /**
   * Width of the line laid along the outlines, as a share of the size. Files hold all weights and are drawn in their
   * lightest where nothing else is there: the line brings them to the page's two weights, by eye.
   */
  readonly edge: Readonly<Record<400 | 600, number>>;
}

export function moreLetters(font: Font): MoreLetters {
  const { default: drawn = 400 } = font.variationAxes.wght ?? {};
  return { font, edge: drawn < 300 ? { 400: 0.045, 600: 0.075 } : { 400: 0, 600: 0.035 } };
}

/** Part of some words that one file has the letters of; null: the page's own family. */
export interface WordPart {
  readonly text: string;
  readonly more: MoreLetters | null;
}

/** Cuts words by who has their letters. What stands between two parts of one script, as a space, stays with it. */
export function wordParts(
  words: string,
  isOwn: (codePoint: number) => boolean,
  more: readonly MoreLetters[],
): readonly WordPart[] {
  const letters = [...words].map((text) => {
    const code = text.codePointAt(0) ?? 32;
    const has = more.find(({ font }) => font.hasGlyphForCodePoint(code)) ?? null;
    return { text, plain: isOwn(code), between: /^[\s\p{P}\p{M}\p{Cf}]$/u.test(text), has };
  });
  const parts: { text: string; more: MoreLetters | null }[] = [];
  letters.forEach((letter, place) => {
    const before = parts.at(-1)?.more ?? null;
    const next = letters.slice(place).find(({ between }) => !between);
    const inside =
      letter.between &&
      before?.font.hasGlyphForCodePoint(letter.text.codePointAt(0) ?? 32) === true &&
      (next === undefined ? !letter.plain : !next.plain && next.has === before);
    const found = inside ? before : letter.plain ? null : letter.has;
    const last = parts.at(-1);
    if (last && last.more === found) last.text += letter.text;
    else parts.push({ text: letter.text, more: found });
  });
  return parts;
}

/** Width of a part in a file's letters, shaped as its script asks. */
export const partWidth = ({ font }: MoreLetters, text: string, size: number): number =>
  (font.layout(text).advanceWidth * size) / font.unitsPerEm;

/** A part as outlines, from `left` on the base line: so it looks alike on every paper and screen. */
export function partOutline(
  { font, edge }: MoreLetters,
  text: string,
  left: Point,
  { size, weight, colour }: Extract<DrawingOp, { op: 'words' }>,
): DrawingOp {
  const run = font.layout(text);
  const scale = size / font.unitsPerEm;
  const contours: Point[][] = [];
  let x = 0;
  let y = 0;
  run.glyphs.forEach((glyph, index) => {
    const place = run.positions[index];
    const [fromX, fromY] = [x + (place?.xOffset ?? 0), y + (place?.yOffset ?? 0)];
    for (const contour of flattened(glyph.path.commands))
      contours.push(
        contour.map((point) => ({
          x: left.x + (fromX + point.x) * scale,
          y: left.y - (fromY + point.y) * scale,
        })),
      );
    x += place?.xAdvance ?? glyph.advanceWidth;
    y += place?.yAdvance ?? 0;
  });
  const width = edge[weight] * size;
  return {
    op: 'outline',
    words: text,
    contours,
    fill: colour,
    ...(width > 0 ? { edge: { colour, width } } : {}),
  };
}

interface PathCommand {
  readonly command: string;
  readonly args: readonly number[];
}

/** Straight pieces a curve is drawn as: finer than a printer shows at the sizes of a page. */
const pieces = 6;

function flattened(commands: readonly PathCommand[]): readonly (readonly Point[])[] {
  const contours: Point[][] = [];
  for (const { command, args } of commands) {
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = args;
    if (command === 'moveTo') contours.push([{ x: a, y: b }]);
    const contour = contours.at(-1);
    const from = contour?.at(-1);
    // a font's outline begins with a move
    if (!contour || !from) continue;
    const along = (at: (t: number) => Point): void => {
      for (let n = 1; n <= pieces; n++) contour.push(at(n / pieces));
    };
    if (command === 'lineTo') contour.push({ x: a, y: b });
    else if (command === 'quadraticCurveTo')
      along((t) => {
        const [p, q, r] = [(1 - t) ** 2, 2 * t * (1 - t), t ** 2];
        return { x: p * from.x + q * a + r * c, y: p * from.y + q * b + r * d };
      });
    else if (command === 'bezierCurveTo')
      along((t) => {
        const [p, q, r, s] = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t ** 2 * (1 - t), t ** 3];
        return { x: p * from.x + q * a + r * c + s * e, y: p * from.y + q * b + r * d + s * f };
      });
  }
  return contours;
}
