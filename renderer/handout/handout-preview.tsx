import { useEffect, useRef, useState } from 'react';
import type { Composition } from '#core/drawing/composition';
import { drawComposition } from '../export/draw-composition';
import { useElementSize } from '../ui/use-element-size';
import type { FrameSource } from '../video/frame-source';
import { pageFamily } from './handout-letters';
import { handoutWords } from '#core/words/handout';

interface Props {
  readonly composition: Composition;
  readonly film: FrameSource | null;
  readonly title: string;
}

/** The page, drawn from the very composition that is printed, as large as there is room. */
export function HandoutPreview({ composition, film, title }: Props) {
  const room = useRef<HTMLElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const size = useElementSize(room);
  const [trouble, setTrouble] = useState(false);
  const [drawn, setDrawn] = useState(false);
  const fit = Math.min(
    (size.width - 32) / composition.width,
    Math.max((size.height - 32) / composition.height, 0.9),
  );
  useEffect(() => {
    const target = canvas.current;
    if (!target || fit <= 0) return;
    const stop = new AbortController();
    setDrawn(false);
    drawComposition(target, composition, {
      scale: fit * window.devicePixelRatio,
      family: `"${pageFamily}"`,
      sources: [film],
      signal: stop.signal,
    }).then(
      () => {
        setTrouble(false);
        setDrawn(true);
      },
      (problem: unknown) => {
        if (!stop.signal.aborted) setTrouble(problem instanceof Error);
      },
    );
    return () => stop.abort();
  }, [composition, film, fit]);
  return (
    <section className="handout-preview" ref={room} aria-label={title}>
      <canvas
        ref={canvas}
        role="img"
        aria-label={title}
        data-drawn={drawn && film !== null}
        style={{ width: composition.width * fit, height: composition.height * fit }}
      />
      {trouble && <p role="alert">{handoutWords('picturePageCant')}</p>}
    </section>
  );
}
