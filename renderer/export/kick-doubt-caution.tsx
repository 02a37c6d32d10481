import { swimDoubtWords } from '#core/measures/kick-doubt-words';
import type { Reading } from '#core/measures/reading';

interface Props {
  readonly readings: readonly Reading[];
  readonly slowdown: number;
  /** Which of two swims is meant. */
  readonly of?: string;
}

/** Before readings leave the app: says when the kick frequency can't be a person's. Nothing without such a doubt. */
export function KickDoubtCaution({ readings, slowdown, of }: Props) {
  const words = swimDoubtWords(readings, slowdown);
  if (!words) return null;
  return (
    <p className="caution kick-doubt">
      {of && <strong>{of}: </strong>}
      {words}
    </p>
  );
}
