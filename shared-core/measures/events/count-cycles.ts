import type { TimedEvent } from '../timed-event';

export interface CycleCount {
  /** Seconds of one cycle, roughly: right within what cycles differ by, so that gaps can be counted in it. */
  readonly typical: number;
  /** Share of the gaps that are whole numbers of cycles. */
  readonly share: number;
  /** Another length explains the gaps about as well, so that marks of every second cycle may be missing. */
  readonly isContested: boolean;
}

/** A gap longer than this many cycles can't be counted in whole ones with confidence. Our default. */
export const longestCounted = 3.5;

/**
 * How far a gap may be from a whole number of cycles, in cycles: a swimmer's tempo drifts by some 5 % either way and marks
 * stray by some 3 %; a longer gap may stray more. Set on the seeds of the bench of incomplete marking.
 */
const within = (cycles: number): number => 0.1 + 0.04 * (cycles - 1);

/**
 * What a gap of several cycles counts against a single one: of two periods that explain about as many gaps, the longer one is
 * right, since the shorter explains any gap. Our default.
 */
const worth = (cycles: number): number => 1 - 0.19 * (cycles - 1);

/** What a gap too long to be counted speaks for a period: missing marks may make any gap long, and none short. Our default. */
const longWorth = 0.3;

/**
 * Where hardly half of the gaps are single cycles of the length that explains most, a wrong mark or two may have made it so: then
 * another length may score lower by as much of a gap. Our defaults.
 */
const mostlySingle = 0.5;
const wrongGap = 1;

/** An explanation whose score is lower by this does not compete; and lengths closer than this, in logarithms, are one. Our defaults. */
const clearlyWorse = 0.05;
const otherLength = 0.25;

/** Gaps tried as a period at most; a long swim's are alike. Our default. */
const tried = 40;

/**
 * The usual length of a cycle, from the gaps between marks of the same kind, all kinds together: the longest of which most
 * gaps are whole multiples. A kind of which every second mark is missing is so told by the others. Null without a gap.
 */
export function countCycles(rows: readonly (readonly TimedEvent[])[]): CycleCount | null {
  const gaps = rows
    .flatMap((row) => row.slice(1).map((mark, i) => mark.time - (row[i]?.time ?? mark.time)))
    .filter((gap) => gap > 0)
    .sort((a, b) => a - b);
  if (gaps.length === 0) return null;
  const step = Math.max(1, gaps.length / tried);
  let best = { typical: 0, score: -1, share: 0, single: 0 };
  const all: (typeof best)[] = [];
  for (let at = 0; at < gaps.length; at += step)
    for (const parts of [1, 2, 3]) {
      const found = explained(gaps, (gaps[Math.floor(at)] as number) / parts);
      all.push(found);
      if (
        found.score > best.score + 1e-9 ||
        (found.score > best.score - 1e-9 && found.typical > best.typical)
      )
        best = found;
    }
  const margin = best.single < mostlySingle ? Math.max(clearlyWorse, wrongGap / gaps.length) : clearlyWorse;
  const isContested = all.some(
    ({ typical, score }) =>
      score > best.score - margin && Math.abs(Math.log(typical / best.typical)) > otherLength,
  );
  return { typical: best.typical, share: best.share, isContested };
}

/** How well a period explains gaps, and the mean cycle of those it does. */
function explained(
  gaps: readonly number[],
  period: number,
): { typical: number; score: number; share: number; single: number } {
  let [score, fitting, single, sum, count] = [0, 0, 0, 0, 0];
  for (const gap of gaps) {
    const cycles = Math.max(1, Math.round(gap / period));
    if (cycles > longestCounted) score += longWorth;
    if (cycles > longestCounted || Math.abs(gap / period - cycles) > within(cycles)) continue;
    score += worth(cycles);
    fitting += 1;
    if (cycles === 1) single += 1;
    sum += gap;
    count += cycles;
  }
  return {
    typical: count > 0 ? sum / count : period,
    score: score / gaps.length,
    share: fitting / gaps.length,
    single: single / gaps.length,
  };
}
