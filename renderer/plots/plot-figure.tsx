import type { PlotOptions } from '@observablehq/plot';
import { useEffect, useRef } from 'react';
import { useElementSize } from '../ui/use-element-size';
import { drawPlot, type DrawnPlot } from './draw-plot';

/** A point that leads to its frame when it is chosen. */
export interface FramePoint {
  readonly frame: number | null;
}

interface Props {
  /** What the plot shows, for those who hear it; the numbers are in the table beside it. */
  readonly label: string;
  readonly options: PlotOptions;
  readonly onChoose: (point: FramePoint) => void;
  readonly onDrawn: (drawn: DrawnPlot | null) => void;
}

const isFramePoint = (value: unknown): value is FramePoint =>
  typeof value === 'object' && value !== null && 'frame' in value;

/** Observable Plot in the box it is given. A click goes to the frame of the point nearest to the pointer. */
export function PlotFigure({ label, options, onChoose, onDrawn }: Props) {
  const box = useRef<HTMLDivElement>(null);
  const size = useElementSize(box);
  useEffect(() => {
    const home = box.current;
    if (!home || size.width < 40 || size.height < 40) return;
    const drawn = drawPlot({
      ...options,
      width: size.width,
      height: size.height,
      style: { background: 'transparent', color: 'var(--ink)' },
    });
    const choose = (): void => {
      const value: unknown = drawn.value;
      if (isFramePoint(value)) onChoose(value);
    };
    drawn.addEventListener('click', choose);
    home.append(drawn);
    onDrawn(drawn);
    return () => {
      onDrawn(null);
      drawn.remove();
    };
  }, [options, onChoose, onDrawn, size.width, size.height]);
  return <div className="plot-box" ref={box} role="img" aria-label={label} />;
}
