import { type ReactNode, useEffect, useMemo, useRef } from 'react';
import { useStore } from 'zustand';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import { Magnifier } from './magnifier';
import { PictureCanvas } from './picture-canvas';
import { StageOverlay } from './stage-overlay';
import { fitView } from '../open-swim/stage-view';
import { useElementSize } from '../ui/use-element-size';
import { useKeepsInView, useKeptView } from './use-kept-view';
import { useStagePointer } from './use-stage-pointer';
import './stage.css';
import { stageWords } from '#core/words/stage';

interface Props {
  /** Never closer by itself: where the swimmer is would give away marks that are not to be seen. */
  readonly wholePicture?: boolean;
  readonly children?: ReactNode;
}

/** The picture with its overlay. `children` lie over it: only what says that there is no picture to look at. */
export function Stage({ wholePicture = false, children }: Props) {
  const element = useRef<HTMLDivElement>(null);
  const surface = useRef<HTMLDivElement>(null);
  const spaceHeld = useRef(false);
  const size = useElementSize(element);
  const width = useSwim((swim) => swim.clip.width);
  const height = useSwim((swim) => swim.clip.height);
  const frame = useView((state) => state.frame);
  const tool = useView((state) => state.tool);
  const shownFrame = useView((state) => state.shownFrame);
  const picture = useMemo(() => ({ width, height }), [width, height]);
  const playing = useView((state) => state.playing);
  // moments are reviewed on the swimmer, whatever is usual
  const reviewing = useStore(useOpenSwim().follow, (state) => state.looking !== null);
  const kept = useKeepsInView(playing);
  const keep = (kept || reviewing) && !wholePicture;
  const viewAt = useKeptView(picture, size, keep);
  const view = viewAt(shownFrame ?? frame);
  useStagePointer(surface, { view, size, picture, kept: keep }, spaceHeld);

  useEffect(() => {
    const key = (event: KeyboardEvent): void => {
      if (event.code === 'Space') spaceHeld.current = event.type === 'keydown';
    };
    const blurred = (): void => {
      spaceHeld.current = false;
    };
    window.addEventListener('keydown', key);
    window.addEventListener('keyup', key);
    window.addEventListener('blur', blurred);
    return () => {
      window.removeEventListener('keydown', key);
      window.removeEventListener('keyup', key);
      window.removeEventListener('blur', blurred);
    };
  }, []);

  return (
    <section
      className="stage"
      ref={element}
      aria-label={stageWords('stage')}
      data-tool={tool}
      data-shown-frame={shownFrame ?? ''}
      // how much larger than the whole picture, for whoever looks on from outside
      data-near={size.width > 0 ? (view.scale / fitView(picture, size).scale).toFixed(2) : ''}
    >
      <div className="stage-surface" ref={surface}>
        {size.width > 0 && <PictureCanvas viewAt={viewAt} size={size} />}
        {size.width > 0 && <StageOverlay view={view} size={size} />}
      </div>
      <Magnifier view={view} size={size} />
      {children}
    </section>
  );
}
