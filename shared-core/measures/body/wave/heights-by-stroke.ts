import { strokesOf } from '../../events/strokes';
import type { BodyContext } from '../context/body-context';

/**
 * One kick height a stroke, for what the swimmer does from stroke to stroke: the mean of those turns whose neighbours lie in
 * the same stroke (the bottom of kick one and the top of kick two). All heights would be the wrong row: kick one is not kick
 * two, which is no spread; and a height across the border of two strokes is of both, so that strokes would look more alike
 * than they are.
 *
 * @param heights each with the id of the turn it is of
 * @param mean of all heights, to which those of the strokes are brought
 * @returns null where no strokes are marked, where strokes have no such turns, or not all of them read
 */
export function heightsByStroke(
  { events }: BodyContext,
  heights: ReadonlyMap<string, number>,
  mean: number,
): readonly number[] | null {
  const strokes = strokesOf(events).map(({ kicks }) =>
    kicks.flatMap(({ top, bottom }) => [top, bottom]).slice(1, -1),
  );
  const inner = strokes[0]?.length ?? 0;
  if (inner === 0) return null;
  const means: number[] = [];
  for (const turns of strokes) {
    const read = turns.flatMap((turn) => (turn ? (heights.get(turn.event.id) ?? []) : []));
    if (read.length !== inner || turns.length !== inner) return null;
    means.push(read.reduce((sum, each) => sum + each, 0) / inner);
  }
  const usual = means.reduce((sum, each) => sum + each, 0) / means.length;
  return usual > 0 ? means.map((each) => (mean * each) / usual) : null;
}
