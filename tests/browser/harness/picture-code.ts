/**
 * Numbers written into pictures as black and white blocks. Two rows of sixteen columns across the middle: the first
 * column is white over black, the last black over white, the fourteen between hold the bits, lowest first, the
 * second row their opposite. Blocks are wide and read in their middle, so compression and colour ranges don't matter;
 * a turned or mirrored picture does not read, or reads another number.
 */
export const codeBits = 14;
const columns = codeBits + 2;
const area = { left: 0.04, right: 0.96, top: 0.38, bottom: 0.62 };

/** ffmpeg filters that write the picture's own number; sizes are the picture's. */
export function codeFilter(width: number, height: number): string {
  const blockWidth = Math.floor((width * (area.right - area.left)) / columns);
  const blockHeight = Math.floor((height * (area.bottom - area.top)) / 2);
  const left = Math.round(width * area.left);
  const top = Math.round(height * area.top);
  const box = (column: number, row: number, colour: string, when?: string): string =>
    `drawbox=x=${left + column * blockWidth}:y=${top + row * blockHeight}:w=${blockWidth}:h=${blockHeight}` +
    `:color=${colour}:t=fill${when ? `:enable='${when}'` : ''}`;
  const parts = [
    `drawbox=x=${left}:y=${top}:w=${columns * blockWidth}:h=${2 * blockHeight}:color=black:t=fill`,
    box(0, 0, 'white'),
    box(columns - 1, 1, 'white'),
  ];
  for (let bit = 0; bit < codeBits; bit++) {
    const set = `mod(floor(n/${2 ** bit}),2)`;
    parts.push(box(bit + 1, 0, 'white', set), box(bit + 1, 1, 'white', `1-${set}`));
  }
  return parts.join(',');
}

/** Writes a number into a picture's brightness as `codeFilter` does, for pictures made without ffmpeg. */
export function paintCode(grey: Uint8Array, width: number, height: number, number: number): void {
  const blockWidth = Math.floor((width * (area.right - area.left)) / columns);
  const blockHeight = Math.floor((height * (area.bottom - area.top)) / 2);
  const left = Math.round(width * area.left);
  const top = Math.round(height * area.top);
  for (let column = 0; column < columns; column++) {
    const up = column === 0 || (column < columns - 1 && Math.floor(number / 2 ** (column - 1)) % 2 === 1);
    for (let y = 0; y < 2 * blockHeight; y++) {
      const from = (top + y) * width + left + column * blockWidth;
      grey.fill(y < blockHeight === up ? 235 : 16, from, from + blockWidth);
    }
  }
}

/** Reads the number from a picture's pixels (RGBA), or null when there is none to read. */
export function readCode(pixels: Uint8ClampedArray, width: number, height: number): number | null {
  const blockWidth = Math.floor((width * (area.right - area.left)) / columns);
  const blockHeight = Math.floor((height * (area.bottom - area.top)) / 2);
  const white = (column: number, row: number): boolean | null => {
    const x = Math.round(width * area.left) + Math.floor((column + 0.5) * blockWidth);
    const y = Math.round(height * area.top) + Math.floor((row + 0.5) * blockHeight);
    const green = pixels[(y * width + x) * 4 + 1] ?? 128;
    return green > 160 ? true : green < 96 ? false : null;
  };
  const pair = (column: number): boolean | null => {
    const up = white(column, 0);
    const down = white(column, 1);
    return up === null || down === null || up === down ? null : up;
  };
  if (pair(0) !== true || pair(columns - 1) !== false) return null;
  let number = 0;
  for (let bit = 0; bit < codeBits; bit++) {
    const set = pair(bit + 1);
    if (set === null) return null;
    if (set) number += 2 ** bit;
  }
  return number;
}
