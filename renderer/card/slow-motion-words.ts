import type { ClipFacts } from '../video/frame-source';

const short = (value: number): string => Number(value.toPrecision(3)).toString();
/** Two kicks a second in life, to show what the answer does: an example, not a norm. */
const exampleHz = 2;

/**
 * What the answer about slow motion means, in numbers: with the swim's own kicks once they are marked (`filmHz`: kicks a
 * second of film as it plays), else with an example.
 */
export function slowMotionWords(
  { rate, taggedSlowdown }: Pick<ClipFacts, 'rate' | 'taggedSlowdown'>,
  factor: number | null,
  filmHz: number | null = null,
): string {
  if (factor === null)
    return `The file doesn’t say. It plays ${short(rate)} pictures a second; if more were filmed, every time and speed depends on your answer.`;
  const told =
    taggedSlowdown === null
      ? ''
      : taggedSlowdown === 1
        ? `The file keeps the ${short(rate)} pictures a second it was filmed at; phones only play it slowed. `
        : `The file says it was filmed at ${short(taggedSlowdown * rate)} pictures a second. `;
  if (factor === 1)
    return `${told}It plays as it was: one second of film is one second in the water${filmHz === null ? '' : `, and kick frequency reads ${short(filmHz)} Hz`}.`;
  if (filmHz !== null)
    return `${told}It plays ${factor > 1 ? `${short(factor)}× slower` : `${short(1 / factor)}× faster`} than life: kick frequency reads ${short(filmHz * factor)} Hz instead of ${short(filmHz)} Hz.`;
  return factor > 1
    ? `${told}It plays ${short(factor)}× slower than life: two kicks a second look like ${short(exampleHz / factor)}, and are read as ${exampleHz}.`
    : `${told}It plays ${short(1 / factor)}× faster than life: is that right?`;
}
