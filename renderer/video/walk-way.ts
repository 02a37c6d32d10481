/** Frames that the longest step goes (ten) and a little more: what is farther off is a jump. */
const longestStep = 12;

/** Which way a walk goes that came from one frame to another; 0 after a jump, as the coach may go on either way. */
export function walkWay(from: number, to: number): -1 | 0 | 1 {
  if (Math.abs(to - from) > longestStep) return 0;
  return Math.sign(to - from) as -1 | 0 | 1;
}
