import { useMemo } from 'react';
import { matchedScales } from '#core/compare/lay-body-line';
import { fitView, type Size, type StageView } from '../open-swim/stage-view';
import { usePairPart, usePairView } from './pair-session';
import type { Each } from './pair-view';

/** The view each stage has when it is not zoomed: the whole picture, smaller where both bodies are shown equally long. */
export function useHomeViews(sizes: Each<Size>): Each<StageView> {
  const a = usePairPart(0);
  const b = usePairPart(1);
  const sameLength = usePairView((state) => state.sameLength);
  const [sizeA, sizeB] = sizes;
  return useMemo(() => {
    const fits = [fitView(a.swim.clip, sizeA), fitView(b.swim.clip, sizeB)] as const;
    const lengths = [a.context.bodyLength?.pixels ?? null, b.context.bodyLength?.pixels ?? null] as const;
    const scales = sameLength ? matchedScales([fits[0].scale, fits[1].scale], lengths) : null;
    if (!scales) return fits;
    return [centred(a.swim.clip, sizeA, scales[0]), centred(b.swim.clip, sizeB, scales[1])];
  }, [a, b, sameLength, sizeA, sizeB]);
}

function centred(picture: Size, stage: Size, scale: number): StageView {
  return {
    scale,
    x: (stage.width - picture.width * scale) / 2,
    y: (stage.height - picture.height * scale) / 2,
  };
}
