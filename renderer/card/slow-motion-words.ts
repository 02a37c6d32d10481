import type { ClipFacts } from '../video/frame-source';
import { cardFormWords } from '#core/words/card-form';

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
  if (factor === null) return cardFormWords('fileDoesntSay', { short: short(rate) });
  const told =
    taggedSlowdown === null
      ? ''
      : cardFormWords('fileSaysFilmed', {
          taggedSlowdown,
          short: short(rate),
          short2: short(taggedSlowdown * rate),
        });
  if (factor === 1)
    return filmHz === null
      ? cardFormWords('playsOneSecond', { told })
      : cardFormWords('playsOneSecondFilm', { told, short: short(filmHz) });
  if (filmHz !== null)
    return factor > 1
      ? cardFormWords('playsSlowerThan', {
          told,
          short: short(factor),
          short2: short(filmHz * factor),
          short3: short(filmHz),
        })
      : cardFormWords('playsFasterThan', {
          told,
          short: short(1 / factor),
          short2: short(filmHz * factor),
          short3: short(filmHz),
        });
  return factor > 1
    ? cardFormWords('playsSlowerThanLife', {
        told,
        short: short(factor),
        short2: short(exampleHz / factor),
        exampleHz,
      })
    : cardFormWords('playsFasterThanLife', { told, short: short(1 / factor) });
}
