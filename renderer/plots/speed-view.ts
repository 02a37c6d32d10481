import * as Plot from '@observablehq/plot';
import type { SpeedCurve } from '#core/measures/plots/speed-curve';
import { plotDigits, unitText } from './plot-numbers';
import { gridStroke, plotFrame, type PlotView } from './plot-view';
import { plotsWords } from '#core/words/plots';

/** Speed along travel against time, frame by frame and as fitted, with tops and bottoms of the kick. */
export function speedView(curve: SpeedCurve | null): PlotView | null {
  if (!curve || (curve.points.length === 0 && curve.fitted.length === 0)) return null;
  const unit = unitText(curve.unit);
  const { points, fitted, kicks } = curve;
  const all = [...points, ...fitted].map(({ value }) => value);
  const show = plotDigits(all);
  const times = [...points, ...fitted].map(({ time }) => time);
  const [from, to] = [Math.min(...times), Math.max(...times)];
  const top = Math.max(...all);
  const seen = kicks
    .filter(({ time }) => time >= from && time <= to)
    .map((kick) => ({ ...kick, height: top }));
  const who = curve.of === 'hip' ? 'hips' : plotsWords('wholeBody');
  const chosen = [
    ...points.map((point) => ({
      ...point,
      words: `${point.time.toFixed(2)} s: ${show(point.value)} ${unit}`,
    })),
    ...seen.map((kick) => ({
      frame: kick.frame,
      time: kick.time,
      value: kick.height,
      words: kick.top
        ? plotsWords('sKickTop', { time: kick.time.toFixed(2) })
        : plotsWords('sKickBottom', { time: kick.time.toFixed(2) }),
    })),
  ];
  return {
    label: plotsWords('speedAgainstTime', { who, show: show(curve.mean), unit, seen: seen.length }),
    overTime: true,
    options: {
      ...plotFrame,
      x: { label: plotsWords('timeS'), tickSize: 4 },
      y: { label: plotsWords('speedWho', { who, unit }), nice: true, tickSize: 4 },
      symbol: { type: 'identity' },
      marks: [
        Plot.gridY(gridStroke),
        Plot.ruleX(
          seen.filter((kick) => kick.top),
          { x: 'time', stroke: 'var(--feet-line)', strokeOpacity: 0.7 },
        ),
        Plot.ruleX(
          seen.filter((kick) => !kick.top),
          {
            x: 'time',
            stroke: 'var(--feet-line)',
            strokeOpacity: 0.7,
            strokeDasharray: '3 4',
          },
        ),
        Plot.dot(seen, {
          x: 'time',
          y: 'height',
          symbol: 'triangle',
          rotate: (d: { top: boolean }) => (d.top ? 0 : 180),
          r: 5,
          fill: 'var(--feet)',
          stroke: 'var(--casing)',
        }),
        Plot.ruleY([curve.mean], { stroke: 'var(--quiet)', strokeDasharray: '2 4' }),
        Plot.line(fitted, { x: 'time', y: 'value', stroke: 'var(--accent)', strokeWidth: 2.5 }),
        Plot.dot(points, { x: 'time', y: 'value', r: 2.6, stroke: 'var(--ink)', fill: 'var(--ground)' }),
        Plot.tip(
          chosen,
          Plot.pointer({
            x: 'time',
            y: 'value',
            title: 'words',
            fill: 'var(--panel)',
            stroke: 'var(--edge)',
          }),
        ),
      ],
    },
    stops: [...chosen].sort((a, b) => a.time - b.time),
    table: {
      heads: [plotsWords('timeS2'), plotsWords('speedUnit', { unit }), plotsWords('kick')],
      rows: [...chosen]
        .sort((a, b) => a.time - b.time)
        .map(({ frame, time, value, words }) => {
          const kick = /kick (top|bottom)$/.exec(words)?.[1];
          return { frame, cells: [time.toFixed(3), kick ? '' : show(value), kick ?? ''] };
        }),
    },
    legend: [
      {
        sign: 'ring',
        tone: 'var(--ink)',
        words: plotsWords('frameFrameLow', { cutoffHz: curve.cutoffHz.toFixed(1) }),
      },
      { sign: 'line', tone: 'var(--accent)', words: plotsWords('fittedOverWhole') },
      { sign: 'triangle', tone: 'var(--feet)', words: plotsWords('kickTopUpside') },
      { sign: 'dash', tone: 'var(--quiet)', words: 'mean' },
    ],
  };
}
