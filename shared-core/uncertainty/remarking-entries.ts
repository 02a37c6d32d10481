import type { LandmarkName } from '../marks/landmark';
import type { CoachFile } from '../swim-file/coach-file';
import type { Swim } from '../swim-file/swim-schema';
import { type ClipClock, localFrameInterval, realTimeOf } from '../timeline/clip-clock';
import type { Point } from '../units/point';
import type { RemarkingItem } from './remarking-plan';

/** What the coach marked the second time: a frame, or points; points that can't be seen are left out. */
export type RemarkingAnswer =
  | { readonly frame: number }
  | { readonly points: Readonly<Partial<Record<LandmarkName, Point>>> };

type Entry = CoachFile['remarkings'][number];

/**
 * The pairs that one answer gives, as they are kept: second minus first, in real seconds or in pixels of the shown
 * picture. An answer of the other sort gives none.
 *
 * @param on instant of the second mark, ISO 8601
 */
export function remarkingEntries(
  item: RemarkingItem,
  answer: RemarkingAnswer,
  swim: Pick<Swim, 'id' | 'clip'>,
  clock: ClipClock,
  on: string,
): readonly Entry[] {
  if (item.of === 'event') {
    if (!('frame' in answer)) return [];
    return [
      {
        item: item.kind,
        axis: 'time',
        difference: realTimeOf(clock, answer.frame) - realTimeOf(clock, item.frame),
        frameSeconds: localFrameInterval(clock, item.frame),
        of: 'marked',
        on,
        swimId: swim.id,
      },
    ];
  }
  if (!('points' in answer)) return [];
  const { of } = item;
  return item.points.flatMap(({ landmark, x, y }): Entry[] => {
    const again = answer.points[landmark];
    if (!again) return [];
    const common = {
      item: landmark,
      frameSeconds: null,
      of,
      pictureHeight: swim.clip.height,
      on,
      swimId: swim.id,
    };
    return [
      { ...common, axis: 'x', difference: again.x - x },
      { ...common, axis: 'y', difference: again.y - y },
    ];
  });
}
