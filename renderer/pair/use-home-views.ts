import { useCallback, useMemo } from 'react';
import { matchedScales } from '#core/compare/lay-body-line';
import type { PairPart } from '#core/compare/pair-part';
import { closeView } from '#core/drawing/picture-view';
import { mirroredRoom, swimmerWindows } from '#core/drawing/swimmer-windows';
import { fitView, type Size, type StageView } from '../open-swim/stage-view';
import { useKeepsInView } from '../stage/use-kept-view';
import { usePairPart, usePairView } from './pair-session';
import { type Each, otherOf, type Which } from './pair-view';

export interface HomeViews {
  /** The whole picture, smaller where both bodies are shown equally long: where zooming out ends. */
  readonly whole: Each<StageView>;
  /** The view of a stage that is not zoomed by hand, on a frame of it, while the other is on its own. */
  readonly at: (which: Which, frame: number, otherFrame: number) => StageView;
  readonly kept: boolean;
}

/** The views both stages have when they are not zoomed. */
export function useHomeViews(sizes: Each<Size>): HomeViews {
  const a = usePairPart(0);
  const b = usePairPart(1);
  const sameLength = usePairView((state) => state.sameLength);
  const mirrored = usePairView((state) => state.mirrored);
  const kept = useKeepsInView(usePairView((state) => state.playing));
  const [sizeA, sizeB] = sizes;
  const matched = useMemo(() => {
    const fits = [fitView(a.swim.clip, sizeA), fitView(b.swim.clip, sizeB)] as const;
    const lengths = [a.context.bodyLength?.pixels ?? null, b.context.bodyLength?.pixels ?? null] as const;
    return sameLength ? matchedScales([fits[0].scale, fits[1].scale], lengths) : null;
  }, [a, b, sameLength, sizeA, sizeB]);
  const whole = useMemo(
    (): Each<StageView> => [
      matched ? closeView(null, a.swim.clip, sizeA, matched[0]) : fitView(a.swim.clip, sizeA),
      matched ? closeView(null, b.swim.clip, sizeB, matched[1]) : fitView(b.swim.clip, sizeB),
    ],
    [a, b, matched, sizeA, sizeB],
  );
  const at = useCallback(
    (which: Which, frame: number, otherFrame: number): StageView => {
      if (!kept) return whole[which];
      const close = (of: Which, on: number, most?: number): StageView => {
        const { swim }: PairPart = of === 0 ? a : b;
        const room = swimmerWindows(swim).windowOn(on);
        const shown = mirrored[of] ? mirroredRoom(room, swim.clip.width) : room;
        return closeView(shown, swim.clip, of === 0 ? sizeA : sizeB, most);
      };
      if (!matched) return close(which, frame);
      // equally long bodies come equally near: as near as the one allows that needs more room
      const other = otherOf(which);
      const near = Math.min(
        close(which, frame).scale / matched[which],
        close(other, otherFrame).scale / matched[other],
      );
      return close(which, frame, near * matched[which]);
    },
    [a, b, mirrored, kept, matched, whole, sizeA, sizeB],
  );
  return useMemo(() => ({ whole, at, kept }), [whole, at, kept]);
}
