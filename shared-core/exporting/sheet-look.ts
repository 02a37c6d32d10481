import type { DrawingOp } from '../drawing/drawing-op';
import type { Point } from '../units/point';

/** Ink on white paper: prints in grey as it stands. */
export const sheetLook = {
  ground: '#ffffff',
  ink: '#0b1a20',
  quiet: '#4a5b63',
  rule: '#c3ced3',
} as const;

/** Words without a casing, on paper. */
export function inkWords(
  words: string,
  at: Point,
  size: number,
  weight: 400 | 600 = 400,
  colour: string = sheetLook.ink,
  align: 'left' | 'centre' | 'right' = 'left',
): DrawingOp {
  return { op: 'words', words, at, size, weight, colour, casing: null, align };
}

export function rule(x: number, y: number, length: number, width: number): DrawingOp {
  return {
    op: 'line',
    points: [
      { x, y },
      { x: x + length, y },
    ],
    colour: sheetLook.rule,
    width,
    cap: 'butt',
  };
}
