import { symbolCircle, symbolDiamond, symbolSquare, symbolStar, symbolTriangle, symbolWye } from 'd3-shape';
import * as Plot from '@observablehq/plot';
import { useEffect, useRef } from 'react';
import { isDoubtful } from '#core/measures/doubtful';
import type { SeasonLine } from '#core/practice/season-change';
import type { Target } from '#core/swim-file/target-in-force';
import { doubtMarks, doubtOn } from '../plots/doubt-marks';
import { drawPlot } from '../plots/draw-plot';
import { useElementSize } from '../ui/use-element-size';
import '../plots/plots.css';
import { seasonWords } from '#core/words/season';

/** One shape a line, so that colour is never needed to tell them apart; more lines take them in turn. */
export const lineSymbols = [
  symbolCircle,
  symbolSquare,
  symbolTriangle,
  symbolDiamond,
  symbolStar,
  symbolWye,
] as const;

interface Props {
  readonly lines: readonly SeasonLine[];
  /** Index of the line looked at; the others stand back. */
  readonly chosen: number;
  readonly targets: readonly Target[];
  readonly label: string;
}

const dayOf = (day: string): Date => new Date(`${day}T12:00:00`);

/** What is drawn of each swim, and which line it is on; a doubtful one says so beside it. */
export const seasonDots = (lines: readonly SeasonLine[]) =>
  lines.flatMap((line, at) =>
    line.points.map(({ day, reading }) => ({
      at,
      day: dayOf(day),
      value: reading.value,
      low: reading.interval.low,
      high: reading.interval.high,
      ...doubtOn(isDoubtful(reading)),
    })),
  );

/** A reading over the days filmed, each with its 95 % interval; the bands the coach set lie behind. The table says the same. */
export function SeasonPlot({ lines, chosen, targets, label }: Props) {
  const holder = useRef<HTMLDivElement>(null);
  const { width } = useElementSize(holder);
  useEffect(() => {
    const element = holder.current;
    if (!element || width < 100) return;
    const points = seasonDots(lines);
    const days = points.map(({ day }) => day.getTime());
    const [from, to] = [Math.min(...days), Math.max(...days)];
    const margin = Math.max(2 * 86_400_000, (to - from) * 0.04);
    const span = { first: new Date(from - margin), last: new Date(to + margin) };
    const bands = targetBands(targets, span);
    const strength = ({ at }: { at: number }): number => (at === chosen ? 1 : 0.7);
    const color = ({ at }: { at: number }): string => (at === chosen ? 'var(--accent)' : 'var(--quiet)');
    const chart = drawPlot({
      width,
      height: 340,
      marginTop: 40,
      marginLeft: 56,
      marginRight: 24,
      style: { background: 'transparent', fontSize: '13px', overflow: 'visible' },
      x: {
        type: 'time',
        domain: [span.first, span.last],
        label: null,
        ticks: Math.max(3, Math.floor(width / 140)),
      },
      y: {
        nice: true,
        grid: true,
        label: `${label}${lines[0] ? `, ${lines[0].unit}` : ''}`,
        labelArrow: 'none',
      },
      marks: [
        Plot.rect(bands, {
          x1: 'from',
          x2: 'to',
          y1: 'low',
          y2: 'high',
          fill: 'var(--met)',
          fillOpacity: 0.14,
        }),
        Plot.ruleY(
          bands.flatMap(({ from: x1, to: x2, low, high }) =>
            [low, high].flatMap((y) => (y === undefined ? [] : [{ x1, x2, y }])),
          ),
          { x1: 'x1', x2: 'x2', y: 'y', stroke: 'var(--met)', strokeDasharray: '6 4' },
        ),
        ...lines.map((_, at) =>
          Plot.line(
            points.filter((point) => point.at === at),
            {
              x: 'day',
              y: 'value',
              stroke: at === chosen ? 'var(--accent)' : 'var(--quiet)',
              strokeOpacity: at === chosen ? 0.9 : 0.4,
              strokeWidth: at === chosen ? 2 : 1.25,
              strokeDasharray: at === chosen ? 'none' : '3 3',
            },
          ),
        ),
        Plot.ruleX(points, {
          x: 'day',
          y1: 'low',
          y2: 'high',
          stroke: color,
          strokeOpacity: strength,
          strokeWidth: 2,
        }),
        ...lines.map((_, at) =>
          Plot.dot(
            points.filter((point) => point.at === at),
            {
              x: 'day',
              y: 'value',
              r: at === chosen ? 6 : 4.5,
              symbol: lineSymbols[at % lineSymbols.length],
              fill: color,
              fillOpacity: strength,
              stroke: 'var(--panel)',
              strokeWidth: 1,
            },
          ),
        ),
        ...doubtMarks(points, 'day', 'value'),
      ],
    });
    element.replaceChildren(chart);
    return () => element.replaceChildren();
  }, [lines, chosen, targets, label, width]);
  return (
    <div
      ref={holder}
      className="season-plot"
      role="img"
      aria-label={seasonWords('overSeasonTable', { label })}
    />
  );
}

/** Each band from its first day until the next one; open ends run out of the picture. */
function targetBands(
  targets: readonly Target[],
  span: { readonly first: Date; readonly last: Date },
): { from: Date; to: Date; low: number | undefined; high: number | undefined }[] {
  const inOrder = [...targets].sort((a, b) => ((a.from ?? '') < (b.from ?? '') ? -1 : 1));
  return inOrder.flatMap((target, at) => {
    const next = inOrder[at + 1]?.from ?? null;
    const from = new Date(Math.max(span.first.getTime(), target.from ? dayOf(target.from).getTime() : 0));
    const to = next ? dayOf(next) : span.last;
    if (to <= from || to > span.last || (target.low === null && target.high === null)) return [];
    return [{ from, to, low: target.low ?? undefined, high: target.high ?? undefined }];
  });
}
