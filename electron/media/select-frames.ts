/** Our default: a command line may hold 32,767 letters on Windows, and the tool's other arguments need room too. */
const longestText = 20_000;

/** Frames one after another at even distances, so that few words name many. */
interface Run {
  readonly from: number;
  readonly to: number;
  readonly step: number;
}

/**
 * ffmpeg's `select` expression that lets through exactly the wanted frames of a film, told by their timestamps; null when
 * it would be too long. `times` are all timestamps of the film, ascending; `wanted` are places in it, ascending, each once.
 *
 * ffmpeg refuses long sums (its parser goes 100 deep), and works a sum out anew for every picture: so the runs are found by
 * halving, as in a sorted list.
 */
export function selectFrames(times: readonly number[], wanted: readonly number[]): string | null {
  const runs = runsOf(times, wanted);
  if (runs.length * 20 > longestText) return null;
  const text = halved(runs);
  return text.length > longestText ? null : text;
}

function halved(runs: readonly Run[]): string {
  const [first] = runs;
  if (!first) return '0';
  if (runs.length === 1) return oneRun(first);
  const middle = runs.length >> 1;
  return `if(lt(pts,${runs[middle]?.from ?? 0}),${halved(runs.slice(0, middle))},${halved(runs.slice(middle))})`;
}

function oneRun({ from, to, step }: Run): string {
  if (from === to) return `eq(pts,${from})`;
  const between = `between(pts,${from},${to})`;
  return step === 0 ? between : `${between}*not(mod(pts-${from},${step}))`;
}

/** Runs that together hold the wanted frames and no other of the film; step 0: every frame from one to the other. */
function runsOf(times: readonly number[], wanted: readonly number[]): readonly Run[] {
  const runs: Run[] = [];
  for (let begin = 0; begin < wanted.length; ) {
    const first = wanted[begin] as number;
    const from = times[first] as number;
    const whole = neighbours(wanted, begin);
    const even = evenly(times, wanted, begin);
    const end = Math.max(whole, even.end);
    runs.push({
      from,
      to: times[wanted[end] ?? first] ?? from,
      step: whole >= even.end ? 0 : even.step,
    });
    begin = end + 1;
  }
  return runs;
}

/** The last of the wanted from `begin` on that follow one another without a gap. */
function neighbours(wanted: readonly number[], begin: number): number {
  let end = begin;
  while (wanted[end + 1] === (wanted[end] as number) + 1) end += 1;
  return end;
}

/** The last of the wanted from `begin` on that stand at even distances, with no unwanted frame at such a distance. */
function evenly(
  times: readonly number[],
  wanted: readonly number[],
  begin: number,
): { readonly end: number; readonly step: number } {
  const at = (place: number): number => times[wanted[place] ?? -1] ?? Number.NaN;
  const step = at(begin + 1) - at(begin);
  let end = begin;
  while (at(end + 1) - at(end) === step && isOnlyOne(times, wanted, end, step)) end += 1;
  return { end, step };
}

/** Whether none of the frames passed over between a wanted one and the next lies a step on. */
function isOnlyOne(
  times: readonly number[],
  wanted: readonly number[],
  place: number,
  step: number,
): boolean {
  const first = wanted[place] as number;
  const from = times[first] as number;
  for (let frame = first + 1; frame < (wanted[place + 1] as number); frame++)
    if (((times[frame] as number) - from) % step === 0) return false;
  return true;
}
