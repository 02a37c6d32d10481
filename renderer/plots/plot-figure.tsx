import { plot, type PlotOptions } from '@observablehq/plot';
import { useEffect, useRef } from 'react';
import { useElementSize } from '../stage/use-element-size';

/** A point that leads to its frame when it is chosen. */
export interface FramePoint {
  readonly frame: number | null;
}

/** A drawn plot: where a value lies, to put the playhead on it. */
export type DrawnPlot = ReturnType<typeof plot>;

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
    const drawn = plot({
      ...options,
      width: size.width,
      height: size.height,
      className: 'plot',
      style: { background: 'transparent', color: 'var(--ink)' },
    });
    // the content policy lets no style of a page's own making in; these rules are in plots.css
    for (const style of drawn.querySelectorAll('style')) style.remove();
    // its parts are named for their makers; what it shows is said by the box around it
    drawn.setAttribute('aria-hidden', 'true');
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
