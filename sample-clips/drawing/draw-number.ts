import type { SKRSContext2D } from '@napi-rs/canvas';
import { numberBlocks, numberPattern, numberStrip } from '../picture-number';

/** The seven strokes of a digit: top, upper right, lower right, bottom, lower left, upper left, middle. */
const strokes = [
  '1111110',
  '0110000',
  '1101101',
  '1111001',
  '0110011',
  '1011011',
  '1011111',
  '1110000',
  '1111111',
  '1111011',
] as const;

/**
 * The picture's own number, as blocks for machines and digits for people, in the lower left corner. Digits are drawn as
 * strokes: no font of the machine takes part.
 */
export function drawNumber(context: SKRSContext2D, width: number, height: number, number: number): void {
  const { left, top, block } = numberStrip(width, height);
  const pad = Math.round(block / 3);
  context.fillStyle = '#000000';
  context.fillRect(left - pad, top - pad, numberBlocks * block + 2 * pad, block + 2 * pad);
  numberPattern(number).forEach((white, i) => {
    context.fillStyle = white ? '#ffffff' : '#000000';
    context.fillRect(left + i * block, top, block, block);
  });
  context.lineCap = 'round';
  context.lineWidth = Math.max(1.4, block / 8);
  context.strokeStyle = 'rgba(255,255,255,0.88)';
  const wide = block * 0.52;
  const half = block / 2;
  [...String(number)].forEach((digit, i) => {
    const x = left + numberBlocks * block + 2 * pad + 6 + i * block * 0.86;
    const ends = [
      [0, 0, wide, 0],
      [wide, 0, wide, half],
      [wide, half, wide, block],
      [0, block, wide, block],
      [0, half, 0, block],
      [0, 0, 0, half],
      [0, half, wide, half],
    ] as const;
    context.beginPath();
    ends.forEach(([x0, y0, x1, y1], k) => {
      if (strokes[Number(digit)]?.[k] !== '1') return;
      context.moveTo(x + x0, top + y0);
      context.lineTo(x + x1, top + y1);
    });
    context.stroke();
  });
}
