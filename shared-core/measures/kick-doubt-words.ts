import { humanKickHz } from './events/kick-rhythm';
import { joinedDoubts } from './doubt';
import { doubtWords } from './doubt-words';
import { type KickDoubt, kickDoubt } from './kick-doubt';
import type { Reading } from './reading';
import { doubtsWords } from '../words/doubts';

const short = (value: number): string => Number(value.toPrecision(3)).toString();

export const slowdownWords = (slowdown: number): string =>
  doubtsWords('slowerThanLife', { slowdown, short: short(slowdown) });

/** What is odd about a kick frequency, and which slow motion would make it a human's. */
export function kickDoubtWords({ hz, tooSlow, better }: KickDoubt): string {
  const odd = `${doubtsWords('kickFrequencyReads', { short: short(hz), low: humanKickHz.low, high: humanKickHz.high })} `;
  if (better)
    return doubtsWords('filmedSlowMotion', {
      slowdown: better.slowdown,
      odd,
      slowdown2: slowdownWords(better.slowdown),
      short: short(better.hz),
    });
  return tooSlow ? doubtsWords('checkSlowMotion', { odd }) : doubtsWords('checkSlowMotionWhether', { odd });
}

/** What speaks against a swim's very times, so against every second that is printed of it; null when nothing does. */
export function timesDoubtWords(readings: readonly Reading[], slowdown: number): string | null {
  const kick = readings.find(({ id }) => id === 'kick-frequency');
  const doubt = kick?.status === 'computed' ? kickDoubt(kick.value, slowdown) : null;
  if (doubt) return doubtsWords('theseTimesCant', { kickDoubt: kickDoubtWords(doubt) });
  const unusual = readings.some(
    (each) => each.status === 'computed' && each.doubts.some(({ code }) => code === 'times-unusual'),
  );
  return unusual
    ? doubtsWords('theseTimesDoubtful', { doubt: doubtWords({ code: 'times-unusual', frames: [] }) })
    : null;
}

/** What is doubtful about a swim's readings in words, for wherever they leave the app; null when nothing is. */
export function swimDoubtWords(readings: readonly Reading[], slowdown: number): string | null {
  const kick = readings.find(({ id }) => id === 'kick-frequency');
  const doubt = kick?.status === 'computed' ? kickDoubt(kick.value, slowdown) : null;
  if (doubt) return doubtsWords('theseTimesCant', { kickDoubt: kickDoubtWords(doubt) });
  const all = joinedDoubts(...readings.map((each) => (each.status === 'computed' ? each.doubts : []))).filter(
    // of single small waves, which say so themselves
    ({ code }) => code !== 'marking-error-large',
  );
  return all.length === 0
    ? null
    : doubtsWords('someReadingsDoubtful', { all: all.map(doubtWords).join('; ') });
}
