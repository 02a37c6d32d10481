import type { ClipFacts } from '../video/frame-source';

const short = (value: number): string => Number(value.toPrecision(3)).toString();
/** Two kicks a second in life, to show what the answer does: an example, not a norm. */
const exampleHz = 2;

/** What the answer about slow motion means, with an example in numbers. */
export function slowMotionWords(
  { rate, taggedSlowdown }: Pick<ClipFacts, 'rate' | 'taggedSlowdown'>,
  factor: number | null,
): string {
  if (factor === null)
    return `The file doesn’t say. It plays ${short(rate)} pictures a second; if more were filmed, every time and speed depends on your answer.`;
  const told =
    taggedSlowdown === null
      ? ''
      : `The file says it was filmed at ${short(taggedSlowdown * rate)} pictures a second. `;
  if (factor === 1) return `${told}It plays as it was: one second of film is one second in the water.`;
  return factor > 1
    ? `${told}It plays ${short(factor)}× slower than life: two kicks a second look like ${short(exampleHz / factor)}, and are read as ${exampleHz}.`
    : `${told}It plays ${short(1 / factor)}× faster than life: is that right?`;
}
