/**
 * Uniform numbers from 0 up to but not 1, the same for the same seed: Weyl steps mixed by the finalizer of MurmurHash3
 * (constants from memory; the tests look at what comes out). Good enough to shuffle repeats, not to keep
 * secrets.
 */
export function seededUniform(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x85ebca6b);
    mixed ^= mixed >>> 13;
    mixed = Math.imul(mixed, 0xc2b2ae35);
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 32;
  };
}
