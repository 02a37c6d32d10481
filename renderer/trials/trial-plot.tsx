import * as Plot from '@observablehq/plot';
import { useEffect, useRef } from 'react';
import { isDoubtful } from '#core/measures/doubtful';
import type { TrialPoint } from '#core/practice/trial-points';
import { doubtMarks, doubtOn } from '../plots/doubt-marks';
import { drawPlot } from '../plots/draw-plot';
import '../plots/plots.css';
import { trialsWords } from '#core/words/trials';

interface Props {
  readonly title: string;
  readonly points: readonly TrialPoint[];
  readonly xLabel: string;
  readonly yLabel: string;
}

/** Shapes and fills of the conditions in turn: the shape says the same as the colour. */
const symbols = ['circle', 'square', 'triangle', 'diamond', 'star', 'cross'];
const fills = ['var(--feet)', 'var(--hands)', 'var(--head)', 'var(--course)', 'var(--met)', 'var(--unmet)'];

/** What is drawn of each repeat; one of whose readings is doubtful says so beside it. */
export const trialDots = (points: readonly TrialPoint[]) =>
  points.map(({ level, x, y }) => ({
    level: level ?? trialsWords('notSaid'),
    x: x.value,
    y: y.value,
    x1: x.value - x.half,
    x2: x.value + x.half,
    y1: y.value - y.half,
    y2: y.value + y.half,
    ...doubtOn(isDoubtful(x) || isDoubtful(y)),
  }));

/** One reading against another: a point a repeat, with both 95 % intervals from marking as bars. */
export function TrialPlot({ title, points, xLabel, yLabel }: Props) {
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = place.current;
    if (!element) return;
    const levels = [...new Set(points.map(({ level }) => level ?? trialsWords('notSaid')))];
    const data = trialDots(points);
    const drawn = drawPlot({
      width: 440,
      height: 300,
      marginLeft: 52,
      marginBottom: 42,
      style: { background: 'transparent', color: 'inherit', fontSize: '13px', fontFamily: 'inherit' },
      x: { label: xLabel, nice: true, labelArrow: 'none' },
      y: { label: yLabel, nice: true, grid: true, labelArrow: 'none' },
      symbol: {
        domain: levels,
        range: levels.map((_, i) => symbols[i % symbols.length] ?? 'circle'),
        legend: true,
      },
      color: { domain: levels, range: levels.map((_, i) => fills[i % fills.length] ?? 'currentColor') },
      marks: [
        Plot.link(data, { x1: 'x1', x2: 'x2', y1: 'y', y2: 'y', strokeOpacity: 0.6 }),
        Plot.link(data, { x1: 'x', x2: 'x', y1: 'y1', y2: 'y2', strokeOpacity: 0.6 }),
        Plot.dot(data, {
          x: 'x',
          y: 'y',
          symbol: 'level',
          fill: 'level',
          stroke: 'currentColor',
          strokeWidth: 1.5,
          r: 7,
        }),
        ...doubtMarks(data, 'x', 'y'),
      ],
    });
    element.replaceChildren(drawn);
    return () => element.replaceChildren();
  }, [points, xLabel, yLabel]);
  return <div ref={place} className="trial-plot" role="img" aria-label={title} />;
}
