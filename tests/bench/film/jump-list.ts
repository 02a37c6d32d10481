/** Park–Miller steps: the same jumps on every run and for every baseline. */
export function jumps(count: number, below: number): number[] {
  let state = 77_003;
  return Array.from({ length: count }, () => {
    state = (state * 48_271) % 2_147_483_647;
    return state % below;
  });
}
