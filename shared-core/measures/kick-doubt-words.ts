import { humanKickHz } from './events/kick-rhythm';
import { joinedDoubts } from './doubt';
import { doubtWords } from './doubt-words';
import { type KickDoubt, kickDoubt } from './kick-doubt';
import type { Reading } from './reading';

const short = (value: number): string => Number(value.toPrecision(3)).toString();

export const slowdownWords = (slowdown: number): string =>
  slowdown === 1 ? 'true speed' : `${short(slowdown)}× slower than life`;

/** What is odd about a kick frequency, and which slow motion would make it a human's. */
export function kickDoubtWords({ hz, tooSlow, better }: KickDoubt): string {
  const odd = `Kick frequency reads ${short(hz)} Hz; a person kicks ${humanKickHz.low} to ${humanKickHz.high} times a second. `;
  if (better)
    return `${odd}Was this filmed in ${better.slowdown === 1 ? 'true speed' : 'slow motion'}? At ${slowdownWords(better.slowdown)} it reads ${short(better.hz)} Hz.`;
  return `${odd}Check the slow motion, and whether ${tooSlow ? 'kicks are missing' : 'kicks are marked twice'}.`;
}

/** What speaks against a swim's very times, so against every second that is printed of it; null when nothing does. */
export function timesDoubtWords(readings: readonly Reading[], slowdown: number): string | null {
  const kick = readings.find(({ id }) => id === 'kick-frequency');
  const doubt = kick?.status === 'computed' ? kickDoubt(kick.value, slowdown) : null;
  if (doubt) return `These times can’t be right. ${kickDoubtWords(doubt)}`;
  const unusual = readings.some(
    (each) => each.status === 'computed' && each.doubts.some(({ code }) => code === 'times-unusual'),
  );
  return unusual ? `These times are doubtful: ${doubtWords({ code: 'times-unusual', frames: [] })}.` : null;
}

/** What is doubtful about a swim's readings in words, for wherever they leave the app; null when nothing is. */
export function swimDoubtWords(readings: readonly Reading[], slowdown: number): string | null {
  const kick = readings.find(({ id }) => id === 'kick-frequency');
  const doubt = kick?.status === 'computed' ? kickDoubt(kick.value, slowdown) : null;
  if (doubt) return `These times can’t be right. ${kickDoubtWords(doubt)}`;
  const all = joinedDoubts(...readings.map((each) => (each.status === 'computed' ? each.doubts : [])));
  return all.length === 0 ? null : `Some readings are doubtful: ${all.map(doubtWords).join('; ')}.`;
}
