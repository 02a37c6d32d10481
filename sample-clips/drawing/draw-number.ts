import type { SKRSContext2D } from '@napi-rs/canvas';
import { numberBlocks, numberPattern, numberStrip } from '../picture-number';

/** The picture's own number, as blocks for machines and digits for people, in the lower left corner. */
export function drawNumber(context: SKRSContext2D, width: number, height: number, number: number): void {
  const { left, top, block } = numberStrip(width, height);
  const pad = Math.round(block / 3);
  context.fillStyle = '#000000';
  context.fillRect(left - pad, top - pad, numberBlocks * block + 2 * pad, block + 2 * pad);
  numberPattern(number).forEach((white, i) => {
    context.fillStyle = white ? '#ffffff' : '#000000';
    context.fillRect(left + i * block, top, block, block);
  });
  context.font = `${block + 2}px sans-serif`;
  context.fillStyle = 'rgba(255,255,255,0.9)';
  context.fillText(String(number), left + numberBlocks * block + 2 * pad + 4, top + block - 1);
}
