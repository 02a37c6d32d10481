import type { LandmarkName } from '../marks/landmark';
import type { Swim } from '../swim-file/swim-schema';
import { sureEnough } from './follow-confidence';

/**
 * Where nothing more need be asked of a landmark: on frames on which the coach placed it, and all along a stretch in which it was
 * answered for. Said to be hidden, it stays hidden both ways until it is seen again, by a mark or a surely followed point;
 * marked inside a followed stretch, the whole stretch waits until it is followed again. Cost: linear in followed points.
 */
export function settledStretches(
  swim: Pick<Swim, 'postures' | 'followed'>,
): (landmark: LandmarkName, frame: number) => boolean {
  const answered = new Map<LandmarkName, Map<number, 'marked' | 'hidden'>>();
  const put = (landmark: LandmarkName, frame: number, how: 'marked' | 'hidden'): void => {
    const own = answered.get(landmark) ?? new Map<number, 'marked' | 'hidden'>();
    answered.set(landmark, own);
    own.set(frame, how);
  };
  for (const { frame, points, hidden } of swim.postures) {
    for (const landmark of hidden) put(landmark, frame, 'hidden');
    for (const landmark of Object.keys(points) as LandmarkName[]) put(landmark, frame, 'marked');
  }
  const settled = new Map<LandmarkName, Set<number>>();
  for (const { landmark, frame, points } of swim.followed) {
    const own = answered.get(landmark);
    if (!own) continue;
    const done = settled.get(landmark) ?? new Set<number>();
    settled.set(landmark, done);
    let from = 0;
    // stretches of points that are not sure, and with them what was answered inside
    for (let i = 0; i <= points.length; i++) {
      const point = points[i];
      const unsure = point !== undefined && (point[2] < sureEnough || own.has(frame + i));
      if (unsure) continue;
      const stretch = Array.from({ length: i - from }, (_, k) => frame + from + k);
      if (stretch.some((each) => own.has(each))) for (const each of stretch) done.add(each);
      from = i + 1;
    }
  }
  return (landmark, frame) =>
    (answered.get(landmark)?.has(frame) ?? false) || (settled.get(landmark)?.has(frame) ?? false);
}
