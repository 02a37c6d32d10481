/** Standard normal numbers from a seed (Lehmer's generator, Box and Muller's transform), for simulations in tests. */
export function seededNormal(seed: number): () => number {
  let state = (seed * 2_654_435_761) % 2_147_483_647 || 1;
  const uniform = (): number => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  for (let i = 0; i < 20; i++) uniform();
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
