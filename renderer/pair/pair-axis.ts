import { scaleLinear } from 'd3-scale';
import type { LockedMode } from '#core/compare/pair-clock';
import type { ScoreAxis } from '../open-swim/score-axis';

/** The common axis: places from the lock, in seconds or in percent of the cycle, to pixels and back. */
export function pairAxis(
  mode: LockedMode,
  span: { readonly from: number; readonly to: number },
  left: number,
  right: number,
): ScoreAxis {
  const scale = scaleLinear([span.from, span.to], [left, right]);
  const wanted = Math.max(2, Math.round((right - left) / 90));
  const places = scale.ticks(wanted);
  const step = (places[1] ?? 1) - (places[0] ?? 0);
  const sign = (place: number): string => (place < 0 ? '−' : place > 0 ? '+' : '');
  const words = (place: number): string => {
    const size = Math.abs(place);
    if (mode === 'cycle') return `${sign(place)}${Math.round(100 * size)} %`;
    return `${sign(place)}${size.toFixed(step >= 1 ? 0 : step >= 0.1 ? 1 : 2)} s`;
  };
  return {
    mode: mode === 'time' ? 'seconds' : 'stroke',
    left,
    right,
    toX: (place) => scale(place),
    toTime: (x) => scale.invert(x),
    ticks: places.map((place) => ({ time: place, words: words(place) })),
  };
}
