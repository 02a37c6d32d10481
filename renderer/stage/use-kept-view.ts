import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { closeView } from '#core/drawing/picture-view';
import { swimmerWindows } from '#core/drawing/swimmer-windows';
import { keepInViewStore } from '../open-swim/keep-in-view';
import { useOpenSwim, useView } from '../open-swim/open-swim';
import { fitView, type Size, type StageView } from '../open-swim/stage-view';

const lessMotion = window.matchMedia('(prefers-reduced-motion: reduce)');

/** Whether the system asks for less motion. */
function useLessMotion(): boolean {
  const [less, setLess] = useState(lessMotion.matches);
  useEffect(() => {
    const hear = (): void => setLess(lessMotion.matches);
    lessMotion.addEventListener('change', hear);
    return () => lessMotion.removeEventListener('change', hear);
  }, []);
  return less;
}

/** Whether the stage keeps the swimmer in view just now. Who asks for less motion sees the whole picture while it plays. */
export function useKeepsInView(playing: boolean): boolean {
  const keep = useStore(keepInViewStore, (state) => state.keep);
  const less = useLessMotion();
  return keep && !(less && playing);
}

/**
 * How each frame's picture lies on the stage: as the coach zoomed it, else close to the swimmer where that is wanted, else
 * whole. What the coach marks on a frame moves its picture only once another frame was shown.
 */
export function useKeptView(picture: Size, size: Size, keep: boolean): (frame: number) => StageView {
  const { document } = useOpenSwim();
  const zoomed = useView((state) => state.stage);
  return useMemo(() => {
    const whole = fitView(picture, size);
    if (zoomed) return () => zoomed;
    if (!keep) return () => whole;
    let shown: { readonly frame: number; readonly view: StageView } | null = null;
    return (frame: number) => {
      if (shown?.frame === frame) return shown.view;
      const view = closeView(swimmerWindows(document.swim()).windowOn(frame), picture, size);
      shown = { frame, view };
      return view;
    };
  }, [document, picture, size, keep, zoomed]);
}
