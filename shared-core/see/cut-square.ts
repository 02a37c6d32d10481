import { fromSquare, type Square } from './square';

/** A picture's pixels, four bytes each (red, green, blue, anything), row by row. */
export interface SeenPicture {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8Array | Uint8ClampedArray;
  /** Pixels of the shown picture to one of these. */
  readonly step: number;
}

/** From so many pixels of the picture to one cut, several are looked at and evened out: else thin limbs break up. */
const coarse = 1.5;

/**
 * Cuts a turned square out of a picture, as a network takes it: `size` × `size` × red, green, blue, row by row, each from `low`
 * to `high`. What lies outside the picture is black. Between pixels by straight lines.
 */
export function cutSquare(
  picture: SeenPicture,
  square: Square,
  size: number,
  low: number,
  high: number,
): Float32Array {
  const { width, height, rgba, step } = picture;
  const out = new Float32Array(3 * size * size);
  const each = Math.max(1, Math.min(4, Math.round(square.side / size / step / coarse)));
  const scale = (high - low) / 255 / (each * each);
  // the way of one cut pixel across and down, in the picture's own pixels
  const corner = fromSquare(square, 0, 0);
  const unit = square.side / size / step;
  const [cos, sin] = [unit * Math.cos(square.angle), unit * Math.sin(square.angle)];
  // pixel middles lie half a pixel in, in the picture and in the square
  const [left, top] = [corner.x / step - 0.5, corner.y / step - 0.5];
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) {
      let red = 0;
      let green = 0;
      let blue = 0;
      for (let part = 0; part < each * each; part++) {
        const across = column + ((part % each) + 0.5) / each;
        const down = row + (Math.floor(part / each) + 0.5) / each;
        const x = left + across * cos - down * sin;
        const y = top + across * sin + down * cos;
        const [i, j] = [Math.floor(x), Math.floor(y)];
        if (i < 0 || j < 0 || i + 1 >= width || j + 1 >= height) continue;
        const [fx, fy] = [x - i, y - j];
        const [a, b, c, d] = [(1 - fx) * (1 - fy), fx * (1 - fy), (1 - fx) * fy, fx * fy];
        const at = 4 * (j * width + i);
        const under = at + 4 * width;
        red +=
          a * (rgba[at] as number) +
          b * (rgba[at + 4] as number) +
          c * (rgba[under] as number) +
          d * (rgba[under + 4] as number);
        green +=
          a * (rgba[at + 1] as number) +
          b * (rgba[at + 5] as number) +
          c * (rgba[under + 1] as number) +
          d * (rgba[under + 5] as number);
        blue +=
          a * (rgba[at + 2] as number) +
          b * (rgba[at + 6] as number) +
          c * (rgba[under + 2] as number) +
          d * (rgba[under + 6] as number);
      }
      const to = 3 * (row * size + column);
      out[to] = low + scale * red;
      out[to + 1] = low + scale * green;
      out[to + 2] = low + scale * blue;
    }
  }
  return out;
}
