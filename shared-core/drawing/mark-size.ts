import type { AngleLabel } from './joint-angles';

/** Our defaults, beside the size of letters. So tall and taller, a swimmer carries marks at their full size. */
const fullHeight = 30;
/** Smaller than this share of it, a mark's shape can't be told any more. */
const least = 0.4;
/** Height of the swimmer that one label takes. */
const heightPerLabel = 4.5;

/** Which angles are said first where there is not room for all: those that a coach of kick and butterfly asks for. Our choice. */
const firstSaid: readonly string[] = ['knee', 'hip', 'trunk', 'shoulder', 'ankle', 'elbow'];

/**
 * By what share marks and lines are drawn smaller, so that they don't hide a small swimmer: 1 for one who is tall on the
 * screen or page. `height` is the swimmer's there and `letters` the size of the letters, in the same pixels; marks of a swimmer
 * whose height isn't known have their full size.
 */
export function markShare(height: number | null, letters: number): number {
  if (height === null) return 1;
  return Math.min(1, Math.max(least, height / (letters * fullHeight)));
}

/**
 * The labels there is room for beside a swimmer of this height. Letters are never made smaller than they can be read: there are
 * fewer of them instead, in the order in which coaches ask for them.
 */
export function labelsWithRoom<Label extends Pick<AngleLabel, 'words'>>(
  labels: readonly Label[],
  height: number | null,
  letters: number,
): readonly Label[] {
  if (height === null) return labels;
  const count = Math.floor(height / (letters * heightPerLabel));
  const rank = ({ words }: Label): number => firstSaid.findIndex((word) => words.startsWith(word));
  const kept = new Set([...labels].sort((a, b) => rank(a) - rank(b)).slice(0, Math.max(0, count)));
  return labels.filter((label) => kept.has(label));
}
