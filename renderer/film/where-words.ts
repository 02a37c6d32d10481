import { type ClipClock, realTimeOf } from '#core/timeline/clip-clock';
import type { ScoreRhythm } from '../open-swim/score-rhythm';
import { filmWords } from '#core/words/film';

export interface WhereWords {
  readonly frame: string;
  readonly time: string;
}

/** "frame 143 of 412" and "2.383 s · 38 % of stroke 2"; frames are counted from 1 for people. */
export function whereWords(
  clock: ClipClock,
  frame: number,
  rhythm: ScoreRhythm,
  cycle: 'stroke' | 'kick',
): WhereWords {
  const time: number = realTimeOf(clock, frame);
  const starts = rhythm.cycleStarts;
  const index = starts.findLastIndex((start) => start <= time + 1e-9);
  const from = starts[index];
  const to = starts[index + 1];
  const share =
    from !== undefined && to !== undefined
      ? ` ${filmWords('of', { time: Math.round((100 * (time - from)) / (to - from)), cycle, index: index + 1 })}`
      : '';
  return {
    frame: filmWords('frameFrame', { frame: frame + 1, starts: clock.table.starts.length }),
    time: `${time.toFixed(3)} s${share}`,
  };
}
