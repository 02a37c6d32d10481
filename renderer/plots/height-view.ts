import * as Plot from '@observablehq/plot';
import { landmarkWords } from '#core/marks/mark-words';
import type { HeightCurve } from '#core/measures/plots/height-curves';
import type { ReadingUnit } from '#core/measures/reading';
import { plotDigits, unitText } from './plot-numbers';
import { gridStroke, plotFrame, type PlotView } from './plot-view';
import { plotsWords } from '#core/words/plots';

const tones = { toe: 'var(--feet-line)', hip: 'var(--ink)' } as const;
const toneOf = (landmark: string): string => (landmark === 'toe' ? tones.toe : tones.hip);

/** Toe and hip height against time, dots as marked, lines as fitted over whole cycles. */
export function heightView(curves: readonly HeightCurve[], lengthUnit: ReadingUnit): PlotView | null {
  const points = curves.flatMap(({ landmark, points: own }) => own.map((each) => ({ ...each, landmark })));
  if (points.length === 0) return null;
  const unit = unitText(lengthUnit);
  const show = plotDigits(points.map(({ value }) => value));
  const fitted = curves.flatMap(({ landmark, fitted: own }) => own.map((each) => ({ ...each, landmark })));
  const words = (point: (typeof points)[number]): string =>
    `${point.time.toFixed(2)} s: ${landmarkWords[point.landmark].toLowerCase()} ${show(point.value)} ${unit}`;
  const byTime = [...points].sort((a, b) => a.time - b.time);
  const frames = [...new Set(byTime.map(({ frame }) => frame))];
  const valueOn = (landmark: string, frame: number): string => {
    const found = points.find((each) => each.landmark === landmark && each.frame === frame);
    return found ? show(found.value) : '–';
  };
  return {
    label: plotsWords('heightAgainstTime', {
      curves: curves.map(({ landmark }) => landmarkWords[landmark].toLowerCase()).join(' and '),
      points: points.length,
    }),
    overTime: true,
    options: {
      ...plotFrame,
      x: { label: plotsWords('timeS'), tickSize: 4 },
      y: { label: plotsWords('heightAboveMean', { unit }), nice: true, tickSize: 4 },
      marks: [
        Plot.gridY(gridStroke),
        Plot.ruleY([0], { stroke: 'var(--quiet)', strokeDasharray: '2 4' }),
        Plot.line(fitted, {
          x: 'time',
          y: 'value',
          z: 'landmark',
          stroke: (d: { landmark: string }) => toneOf(d.landmark),
          strokeWidth: 2.5,
        }),
        Plot.dot(points, {
          x: 'time',
          y: 'value',
          r: 3.2,
          symbol: (d: { landmark: string }) => (d.landmark === 'toe' ? 'triangle' : 'square'),
          stroke: (d: { landmark: string }) => toneOf(d.landmark),
          fill: 'var(--ground)',
        }),
        Plot.tip(
          points,
          Plot.pointer({ x: 'time', y: 'value', title: words, fill: 'var(--panel)', stroke: 'var(--edge)' }),
        ),
      ],
      symbol: { type: 'identity' },
      color: { type: 'identity' },
    },
    stops: byTime.map((point) => ({ frame: point.frame, words: words(point) })),
    table: {
      heads: [plotsWords('timeS2'), ...curves.map(({ landmark }) => `${landmarkWords[landmark]}, ${unit}`)],
      rows: frames.map((frame) => ({
        frame,
        cells: [
          byTime.find((each) => each.frame === frame)?.time.toFixed(3) ?? '–',
          ...curves.map(({ landmark }) => valueOn(landmark, frame)),
        ],
      })),
    },
    legend: [
      ...curves.map(({ landmark }) => ({
        sign: landmark === 'toe' ? ('triangle' as const) : ('square' as const),
        tone: toneOf(landmark),
        words: plotsWords('marked', { landmark: landmarkWords[landmark].toLowerCase() }),
      })),
      { sign: 'line', tone: 'var(--ink)', words: plotsWords('fittedOverWhole') },
    ],
  };
}
