import { strokesOf } from '../events/strokes';
import type { BodyContext } from './body-context';

/**
 * Means over the kicks of each stroke, of values read on frames of kick tops or of kick bottoms. The kicks of one stroke
 * differ from each other always in the same way, and are big or small together: what differs by chance is the strokes.
 *
 * @returns null where no strokes are marked, so that each kick stands for itself; none where a kick of some stroke was not
 *   read or stands outside the strokes, so that the mean of all is not that of the strokes
 */
export function strokeMeans(
  { events }: BodyContext,
  kind: 'kick-top' | 'kick-bottom',
  values: ReadonlyMap<number, number>,
): readonly number[] | null {
  const strokes = strokesOf(events);
  if (strokes.length === 0) return null;
  const rows = strokes.map(({ kicks }) =>
    kicks.flatMap((kick) => {
      const mark = kind === 'kick-top' ? kick.top : kick.bottom;
      return (mark && values.get(mark.event.frame)) ?? [];
    }),
  );
  const kicks = rows[0]?.length ?? 0;
  const even = rows.every((row, i) => row.length === kicks && strokes[i]?.kicks.length === kicks);
  if (!even || kicks * rows.length !== values.size) return [];
  return rows.map((row) => row.reduce((sum, each) => sum + each, 0) / kicks);
}
