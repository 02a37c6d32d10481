import { scaleLinear } from 'd3-scale';
import { cycleWarp } from '#core/compare/cycle-warp';
import { type ClipClock, realTimeOf } from '#core/timeline/clip-clock';

/** One time axis: real seconds to pixels and back. */
export interface ScoreAxis {
  readonly mode: 'seconds' | 'stroke';
  readonly left: number;
  readonly right: number;
  toX(time: number): number;
  toTime(x: number): number;
  /** Marks of the ruler; `major` ones carry words. */
  readonly ticks: readonly { readonly time: number; readonly words: string | null }[];
}

export interface AxisInput {
  readonly mode: 'seconds' | 'stroke';
  readonly from: number;
  readonly to: number;
  readonly left: number;
  readonly right: number;
  /** Starts of strokes (or of kicks, where there are no strokes), real seconds, ascending. */
  readonly strokeStarts: readonly number[];
}

const tickWords = (time: number, step: number): string => {
  const digits = step >= 1 ? 0 : step >= 0.1 ? 1 : 2;
  return `${time.toFixed(digits)} s`;
};

export function makeScoreAxis({ mode, from, to, left, right, strokeStarts }: AxisInput): ScoreAxis {
  const warp = mode === 'stroke' ? cycleWarp(strokeStarts) : null;
  if (warp) {
    const scale = scaleLinear([warp.toCycle(from), warp.toCycle(to)], [left, right]);
    const perStroke = Math.abs(scale(1) - scale(0));
    const parts = perStroke > 420 ? 10 : perStroke > 200 ? 4 : perStroke > 90 ? 2 : 1;
    const ticks: { time: number; words: string | null }[] = [];
    for (let stroke = 0; stroke < strokeStarts.length - 1; stroke++) {
      for (let part = 0; part < parts; part++) {
        const place = stroke + part / parts;
        const percent = Math.round((100 * part) / parts);
        ticks.push({ time: warp.toTime(place), words: `${percent} %` });
      }
    }
    ticks.push({ time: strokeStarts.at(-1) ?? 0, words: '100 %' });
    return {
      mode: 'stroke',
      left,
      right,
      toX: (time) => scale(warp.toCycle(time)),
      toTime: (x) => warp.toTime(scale.invert(x)),
      ticks: ticks.filter((tick) => tick.time >= from - 1e-9 && tick.time <= to + 1e-9),
    };
  }
  const scale = scaleLinear([from, to], [left, right]);
  const wanted = Math.max(2, Math.round((right - left) / 90));
  const times = scale.ticks(wanted);
  const step = (times[1] ?? 1) - (times[0] ?? 0);
  const ticks: { time: number; words: string | null }[] = [];
  for (const time of times) {
    ticks.push({ time, words: tickWords(time, step) });
    if (time + step / 2 <= to) ticks.push({ time: time + step / 2, words: null });
  }
  return { mode: 'seconds', left, right, toX: (time) => scale(time), toTime: (x) => scale.invert(x), ticks };
}

/** From the first picture to the start of the last, real seconds; never empty. */
export function wholeClip(clock: ClipClock): { readonly from: number; readonly to: number } {
  return { from: 0, to: Math.max(0.05, realTimeOf(clock, clock.table.starts.length - 1)) };
}

/** The span shown after zooming about a time; kept inside the clip, never narrower than `narrowest` seconds. */
export function zoomSpan(
  span: { readonly from: number; readonly to: number },
  about: number,
  factor: number,
  whole: { readonly from: number; readonly to: number },
  narrowest: number,
): { readonly from: number; readonly to: number } | null {
  const length = Math.max(narrowest, (span.to - span.from) / factor);
  if (length >= whole.to - whole.from) return null;
  const share = (about - span.from) / (span.to - span.from);
  return moveInside(about - share * length, length, whole);
}

export function panSpan(
  span: { readonly from: number; readonly to: number },
  by: number,
  whole: { readonly from: number; readonly to: number },
): { readonly from: number; readonly to: number } {
  return moveInside(span.from + by, span.to - span.from, whole);
}

function moveInside(from: number, length: number, whole: { readonly from: number; readonly to: number }) {
  const start = Math.max(whole.from, Math.min(whole.to - length, from));
  return { from: start, to: start + length };
}
