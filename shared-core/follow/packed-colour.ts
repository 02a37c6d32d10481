/**
 * A pixel's colour in 16 bits, as film stores it (Y′CbCr): 4 bits of brightness, 6 of blueness (Cb), 6 of redness
 * (Cr). Brightness changes with the water's moving light and is kept coarse; what tells skin from water is chroma.
 */
export const brightnessBins = 16;
export const chromaBins = 64;
export const packedColours = brightnessBins * chromaBins * chromaBins;

/** All three 0 to 255; whole numbers. */
export function packColour(brightness: number, blueness: number, redness: number): number {
  return ((brightness >> 4) << 12) | ((blueness >> 2) << 6) | (redness >> 2);
}

/** The middle of what is packed into `colour`, 0 to 255 each. */
export function unpackColour(colour: number): {
  readonly brightness: number;
  readonly blueness: number;
  readonly redness: number;
} {
  return {
    brightness: ((colour >> 12) << 4) + 8,
    blueness: (((colour >> 6) & 63) << 2) + 2,
    redness: ((colour & 63) << 2) + 2,
  };
}
