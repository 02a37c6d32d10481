import type { ProposalScore } from './follow-scores';

const mean = (values: readonly number[]): number =>
  values.reduce((sum, each) => sum + each, 0) / Math.max(1, values.length);
const rms = (values: readonly number[]): number => Math.sqrt(mean(values.map((each) => each * each)));

/** One row of a table of proposals, after its first cells; null where nothing was there and nothing proposed. */
export function proposalLine(begin: string, scores: readonly ProposalScore[]): string | null {
  if (scores.length === 0) return null;
  const total = (of: (score: ProposalScore) => number): number =>
    scores.reduce((sum, each) => sum + of(each), 0);
  const errors = scores.flatMap((each) => each.errors);
  const inSds = scores.flatMap((each) => each.inSds);
  const stated = errors.map((error, i) => (inSds[i] ? error / inSds[i] : 0));
  const ms = (seconds: number): string => (1000 * seconds).toFixed(1);
  const there = total((each) => each.there);
  const found = total((each) => each.found);
  const inside = inSds.filter((z) => Math.abs(z) <= 1.96).length;
  return `${begin} | ${found} of ${there} | ${there - found} | ${total((each) => each.wrong)} | ${ms(mean(errors))} | ${ms(rms(errors))} | ${ms(rms(stated))} | ${inside} of ${inSds.length} |`;
}
