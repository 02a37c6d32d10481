import type { MeasureWords } from './drawing-op';
import { fittedWords } from './body-line-ops';

/** Words broken into lines no wider than `width`; the last of `most` lines is cut with an ellipsis. Empty: no line. */
export function wrappedWords(
  words: string,
  width: number,
  size: number,
  weight: 400 | 600,
  measure: MeasureWords,
  most: number,
): readonly string[] {
  const lines: string[] = [];
  for (const word of words.split(/\s+/).filter(Boolean)) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && measure(longer, size, weight) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  const kept = lines.slice(0, most);
  if (lines.length > most) kept[most - 1] = lines.slice(most - 1).join(' ');
  return kept.map((line) => fittedWords(line, width, size, weight, measure));
}
