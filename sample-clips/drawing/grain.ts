import { seeded } from '../model/seeded';

const many = 1 << 16;
const random = seeded(4099);
const table = Int8Array.from({ length: many }, () => Math.round(4 * (random() + random() + random() - 1.5)));

/** Adds the slight noise of a sensor to RGBA pixels, the same for the same picture number; at most 6 of 255. */
export function addGrain(pixels: Uint8ClampedArray, number: number): void {
  let at = (number * 26_777) % many;
  for (let i = 0; i < pixels.length; i += 4) {
    const grain = table[at] ?? 0;
    at = (at + 1) & (many - 1);
    // a step that the picture's width does not divide, so that no stripes show
    if ((i & 0xffff) === 0) at = (at + 7919 * ((i >> 16) + 1)) & (many - 1);
    pixels[i] = (pixels[i] ?? 0) + grain;
    pixels[i + 1] = (pixels[i + 1] ?? 0) + grain;
    pixels[i + 2] = (pixels[i + 2] ?? 0) + grain;
  }
}
