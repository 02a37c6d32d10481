/** Real seconds to cycles and back: the start of cycle n is n, and time runs evenly within a cycle. */
export interface CycleWarp {
  toCycle(time: number): number;
  toTime(cycle: number): number;
}

/**
 * Warps time so that every cycle is as long as the next. What lies before the first start and after the last goes on at
 * the mean cycle time. Strictly increasing, so each way undoes the other. Null without two starts at different times.
 *
 * `starts`: real seconds, strictly ascending.
 */
export function cycleWarp(starts: readonly number[]): CycleWarp | null {
  const first = starts[0];
  const last = starts.at(-1);
  if (first === undefined || last === undefined || !(last > first)) return null;
  const mean = (last - first) / (starts.length - 1);
  const at = (cycle: number): number => {
    if (cycle < 0) return first + cycle * mean;
    if (cycle >= starts.length - 1) return last + (cycle - (starts.length - 1)) * mean;
    const whole = Math.floor(cycle);
    const from = starts[whole] ?? first;
    return from + (cycle - whole) * ((starts[whole + 1] ?? last) - from);
  };
  return {
    toTime: at,
    toCycle(time) {
      if (time < first) return (time - first) / mean;
      if (time >= last) return starts.length - 1 + (time - last) / mean;
      let low = 0;
      let high = starts.length - 1;
      while (high - low > 1) {
        const middle = (low + high) >> 1;
        if ((starts[middle] ?? last) <= time) low = middle;
        else high = middle;
      }
      const from = starts[low] ?? first;
      return low + (time - from) / ((starts[high] ?? last) - from);
    },
  };
}
