import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kickWavePath } from '../../../renderer/score/kick-wave';
import { makeScoreAxis, panSpan, zoomSpan } from '../../../renderer/open-swim/score-axis';
import { glyphHeight, layoutScore } from '../../../renderer/score/score-layout';
import { shownPoints, traceRuns } from '../../../renderer/score/body-traces';
import { nearestFrame } from '../../../renderer/score/use-score-pointer';

const base = { from: 0, to: 8, left: 80, right: 880, strokeStarts: [1, 2, 4, 5] };

describe('the time axis of the score', () => {
  it('is true seconds: equal times are equal widths', () => {
    const axis = makeScoreAxis({ ...base, mode: 'seconds' });
    expect(axis.toX(0)).toBe(80);
    expect(axis.toX(4)).toBe(480);
    expect(axis.toTime(680)).toBe(6);
  });

  it('makes every stroke as wide as the next in percent', () => {
    const axis = makeScoreAxis({ ...base, mode: 'stroke' });
    const widths = [axis.toX(2) - axis.toX(1), axis.toX(4) - axis.toX(2), axis.toX(5) - axis.toX(4)];
    for (const width of widths) expect(width).toBeCloseTo(widths[0] ?? 0, 9);
    expect(axis.toX(3)).toBeCloseTo((axis.toX(2) + axis.toX(4)) / 2, 9);
  });

  it('reads back the time it was given, in both ways of counting', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 8, noNaN: true }), fc.boolean(), (time, percent) => {
        const axis = makeScoreAxis({ ...base, mode: percent ? 'stroke' : 'seconds' });
        expect(Math.abs(axis.toTime(axis.toX(time)) - time)).toBeLessThan(1e-9);
      }),
    );
  });

  it('falls back to seconds without two strokes', () => {
    expect(makeScoreAxis({ ...base, mode: 'stroke', strokeStarts: [2] }).mode).toBe('seconds');
  });

  it('zooms about a time, and gives up zooming when all is seen', () => {
    const whole = { from: 0, to: 8 };
    const near = zoomSpan(whole, 2, 2, whole, 0.25);
    expect(near).toEqual({ from: 1, to: 5 });
    expect(near && zoomSpan(near, 2, 0.1, whole, 0.25)).toBeNull();
    expect(panSpan({ from: 1, to: 5 }, 100, whole)).toEqual({ from: 4, to: 8 });
  });
});

describe('what is written on the score', () => {
  it('puts a kick top above its bottom and keeps every glyph on its staff at any height', () => {
    for (const height of [150, 240, 330]) {
      const layout = layoutScore(height);
      expect(glyphHeight(layout, 'kick-top')).toBeLessThan(glyphHeight(layout, 'kick-bottom'));
      expect(glyphHeight(layout, 'shoulder')).toBeGreaterThan(glyphHeight(layout, 'entry'));
      const { feet } = layout.staffs;
      expect(glyphHeight(layout, 'kick-bottom')).toBeLessThan(feet.top + feet.height);
    }
  });

  it('joins a top to a bottom, never two tops', () => {
    const mark = (x: number, top: boolean) => ({ time: x, top, x, y: top ? 0 : 10 });
    expect(kickWavePath([mark(0, true), mark(10, false)]).match(/C/g)).toHaveLength(1);
    expect(kickWavePath([mark(0, true), mark(10, true)])).not.toContain('C');
  });

  it('draws a trace only where body lines are dense', () => {
    const clock = {
      table: { ticksPerSecond: 50, starts: Array.from({ length: 100 }, (_, n) => n), endTick: 100 },
      slowdown: 1,
    };
    const on = (frame: number) => ({ frame, points: { toe: { x: 0, y: frame % 7 } }, hidden: [] });
    expect(traceRuns([0, 2, 4, 6].map(on), 'toe', clock)).toHaveLength(1);
    expect(traceRuns([0, 30, 60, 90].map(on), 'toe', clock)).toHaveLength(0);
  });

  it('shows of a long trace no more than its columns of pixels hold, and none of its peaks less', () => {
    const points = Array.from({ length: 6000 }, (_, i) => ({
      time: i / 60,
      share: 0.5 + 0.4 * Math.sin(i / 9) + (i === 3001 ? 0.3 : 0),
    }));
    const shown = shownPoints({ points }, (time) => 5 * time, 0, 500);
    expect(shown.length).toBeLessThanOrEqual(4 * 501);
    const shares = (list: readonly { readonly share: number }[]): number[] => list.map(({ share }) => share);
    expect(Math.max(...shares(shown))).toBe(Math.max(...shares(points)));
    expect(Math.min(...shares(shown))).toBe(Math.min(...shares(points)));
    expect(shown.map(({ x }) => x)).toEqual([...shown].map(({ x }) => x).sort((a, b) => a - b));
    // looked at closely, all of them, and one beyond each edge so that the line runs out of sight
    const close = shownPoints({ points }, (time) => 600 * (time - 10), 0, 500);
    expect(close.map(({ x }) => Math.round(x)).slice(0, 2)).toEqual([-10, 0]);
    expect(close.at(-1)?.x).toBeGreaterThan(500);
    expect(close.length).toBeGreaterThan(50);
  });

  it('snaps a dragged glyph to the nearest frame, also on uneven frames', () => {
    const clock = { table: { ticksPerSecond: 100, starts: [0, 2, 10, 12], endTick: 14 }, slowdown: 1 };
    expect(nearestFrame(clock, 0.055)).toBe(1);
    expect(nearestFrame(clock, 0.065)).toBe(2);
    expect(nearestFrame(clock, 9)).toBe(3);
    expect(nearestFrame(clock, -1)).toBe(0);
  });
});
