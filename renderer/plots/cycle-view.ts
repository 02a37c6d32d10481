import * as Plot from '@observablehq/plot';
import type { CycleCurve } from '#core/measures/plots/cycle-curves';
import { gridStroke, plotFrame, type PlotView } from './plot-view';
import { plotsWords } from '#core/words/plots';

const names = { 'knee-angle': 'knee', 'hip-angle': 'hip' } as const;
const toneOf = (joint: string): string => (joint === 'knee-angle' ? 'var(--feet-line)' : 'var(--ink)');

/** Knee and hip angle against percent of the cycle: every posture, and mean ± SD where cycles can be compared. */
export function cycleView(curves: readonly CycleCurve[], base: 'stroke' | 'kick'): PlotView | null {
  const points = curves.flatMap(({ joint, points: own }) => own.map((each) => ({ ...each, joint })));
  if (points.length === 0) return null;
  const means = curves.flatMap(({ joint, mean }) =>
    mean.map((each) => ({ ...each, joint, low: each.mean - each.sd, high: each.mean + each.sd })),
  );
  const words = (point: (typeof points)[number]): string =>
    plotsWords('at', {
      names: names[point.joint],
      point: point.value.toFixed(0),
      percent: point.percent.toFixed(0),
      base,
      cycle: point.cycle,
    });
  const percents = [...new Set(means.map(({ percent }) => percent))].sort((a, b) => a - b);
  const meanOn = (joint: string, percent: number): string => {
    const found = means.find((each) => each.joint === joint && each.percent === percent);
    return found ? `${found.mean.toFixed(1)} ± ${found.sd.toFixed(1)}` : '–';
  };
  return {
    label: plotsWords('kneeHipAngle', { base, points: points.length }),
    overTime: false,
    options: {
      ...plotFrame,
      x: { label: plotsWords('ofThe', { base }), domain: [0, 100], tickSize: 4 },
      y: { label: plotsWords('angle'), nice: true, tickSize: 4 },
      color: { type: 'identity' },
      symbol: { type: 'identity' },
      marks: [
        Plot.gridY(gridStroke),
        Plot.ruleY([180], { stroke: 'var(--quiet)', strokeDasharray: '2 4' }),
        Plot.areaY(means, {
          x: 'percent',
          y1: 'low',
          y2: 'high',
          z: 'joint',
          fill: (d: { joint: string }) => toneOf(d.joint),
          fillOpacity: 0.22,
        }),
        Plot.line(means, {
          x: 'percent',
          y: 'mean',
          z: 'joint',
          stroke: (d: { joint: string }) => toneOf(d.joint),
          strokeWidth: 2.5,
        }),
        Plot.dot(points, {
          x: 'percent',
          y: 'value',
          r: 2.8,
          symbol: (d: { joint: string }) => (d.joint === 'knee-angle' ? 'triangle' : 'square'),
          stroke: (d: { joint: string }) => toneOf(d.joint),
          fill: 'var(--ground)',
        }),
        Plot.tip(
          points,
          Plot.pointer({
            x: 'percent',
            y: 'value',
            title: words,
            fill: 'var(--panel)',
            stroke: 'var(--edge)',
          }),
        ),
      ],
    },
    stops: points.map((point) => ({ frame: point.frame, words: words(point) })),
    table:
      percents.length > 0
        ? {
            heads: [
              plotsWords('ofThe', { base }),
              ...curves.map(({ joint }) => plotsWords('meanSd', { names: names[joint] })),
            ],
            rows: percents.map((percent) => ({
              frame: null,
              cells: [String(percent), ...curves.map(({ joint }) => meanOn(joint, percent))],
            })),
          }
        : {
            heads: [plotsWords('ofThe', { base }), plotsWords('joint'), plotsWords('angle2')],
            rows: points.map((point) => ({
              frame: point.frame,
              cells: [point.percent.toFixed(1), names[point.joint], point.value.toFixed(1)],
            })),
          },
    legend: [
      ...curves.map(({ joint }) => ({
        sign: joint === 'knee-angle' ? ('triangle' as const) : ('square' as const),
        tone: toneOf(joint),
        words: names[joint],
      })),
      ...(means.length > 0
        ? [{ sign: 'band' as const, tone: 'var(--quiet)', words: plotsWords('meanSdBetween', { base }) }]
        : []),
    ],
  };
}
