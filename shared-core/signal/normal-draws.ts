/** Rows kept so far, by how many numbers each has. */
const kept = new Map<number, Float64Array>();

/** How many rows there are: even, as each has its mirror image. */
export const drawCount = 600;

/**
 * The same `drawCount` rows of independent normal numbers each time they are asked for, each followed by its mirror image,
 * so that what is worked out from them is the same for the same marks. `width` numbers a row, row by row.
 *
 * @see Box, Muller 1958, Ann Math Stat 29:610–611
 */
export function normalDraws(width: number): Float64Array {
  const known = kept.get(width);
  if (known) return known;
  const draws = new Float64Array(drawCount * width);
  let state = 0x9e3779b9;
  /** In (0, 1). A multiplicative generator after Marsaglia's xorshift; its quality is far beyond what 600 rows show. */
  const uniform = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return ((state >>> 0) + 0.5) / 4294967296;
  };
  for (let row = 0; row < drawCount; row += 2)
    for (let i = 0; i < width; i++) {
      const value = Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
      draws[row * width + i] = value;
      draws[(row + 1) * width + i] = -value;
    }
  kept.set(width, draws);
  return draws;
}
