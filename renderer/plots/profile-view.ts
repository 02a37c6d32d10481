import * as Plot from '@observablehq/plot';
import { landmarkWords } from '#core/marks/mark-words';
import type { ProfilePoint } from '#core/measures/plots/undulation-profile';
import { plotDigits, unitText } from './plot-numbers';
import { gridStroke, plotFrame, type PlotView } from './plot-view';
import { plotsWords } from '#core/words/plots';

/** Undulation from fingertip to toe: mean, ± SD between cycles as a bar, 95 % interval of the mean as whiskers. */
export function profileView(points: readonly ProfilePoint[]): PlotView | null {
  const [first] = points;
  if (!first || points.length < 2) return null;
  const unit = unitText(first.unit);
  const show = plotDigits(points.map(({ high }) => high));
  const data = points.map((point) => ({
    ...point,
    name: landmarkWords[point.landmark],
    least: point.mean - (point.sd ?? 0),
    most: point.mean + (point.sd ?? 0),
  }));
  const spread = (sd: number | null): string =>
    sd === null ? '' : plotsWords('betweenCycles', { show: show(sd), unit });
  return {
    label: plotsWords('undulationAlongBody', {
      data: data.map(({ name, mean }) => `${name.toLowerCase()} ${show(mean)}`).join(', '),
      unit,
    }),
    overTime: false,
    options: {
      ...plotFrame,
      x: { type: 'point', domain: data.map(({ name }) => name), label: null, tickSize: 4, padding: 0.4 },
      y: { label: plotsWords('upDownPerCycle', { unit }), nice: true, zero: true, tickSize: 4 },
      marks: [
        Plot.gridY(gridStroke),
        Plot.ruleY([0], { stroke: 'var(--quiet)' }),
        Plot.ruleX(data, {
          x: 'name',
          y1: 'least',
          y2: 'most',
          stroke: 'var(--feet)',
          strokeWidth: 9,
          strokeOpacity: 0.45,
        }),
        Plot.ruleX(data, {
          x: 'name',
          y1: 'low',
          y2: 'high',
          stroke: 'var(--ink)',
          strokeWidth: 1.5,
          marker: 'tick',
        }),
        Plot.lineY(data, { x: 'name', y: 'mean', stroke: 'var(--quiet)', strokeWidth: 1.5 }),
        Plot.dot(data, { x: 'name', y: 'mean', r: 5, fill: 'var(--ink)' }),
        Plot.tip(
          data,
          Plot.pointerX({
            x: 'name',
            y: 'mean',
            title: (d: (typeof data)[number]) => `${d.name}: ${show(d.mean)} ${unit}${spread(d.sd)}`,
            fill: 'var(--panel)',
            stroke: 'var(--edge)',
          }),
        ),
      ],
    },
    stops: data.flatMap(({ name, mean, sd, frame }) =>
      frame === null ? [] : [{ frame, words: `${name}: ${show(mean)} ${unit}${spread(sd)}` }],
    ),
    table: {
      heads: [
        plotsWords('point'),
        plotsWords('mean', { unit }),
        plotsWords('sdBetweenCycles', { unit }),
        '95 % interval',
        plotsWords('cycles'),
      ],
      rows: data.map(({ name, mean, sd, low, high, cycles, frame }) => ({
        frame,
        cells: [
          name,
          show(mean),
          sd === null ? '–' : show(sd),
          plotsWords('to', { show: show(low), show2: show(high) }),
          String(cycles),
        ],
      })),
    },
    legend: [
      { sign: 'dot', tone: 'var(--ink)', words: 'mean' },
      { sign: 'band', tone: 'var(--feet)', words: plotsWords('sdBetweenCycles2') },
      { sign: 'bar', tone: 'var(--ink)', words: plotsWords('n95IntervalMean') },
    ],
  };
}
