import { describe, expect, it, vi } from 'vitest';
import { createStepWatch, type StepWatch } from '../../../renderer/open-swim/step-watch';

/** Each step asked for after the last one was on the screen. */
const steps = (watch: StepWatch, times: readonly number[]): void => {
  let at = 0;
  times.forEach((time, n) => {
    const step = watch.asked(n, at);
    step.came();
    at += time;
    step.shown(at);
  });
};

describe('watching whether a clip keeps up', () => {
  it('tells once, with the time a slow step takes, when a quarter of the steps are slow', () => {
    const told = vi.fn();
    const watch = createStepWatch(told);
    steps(
      watch,
      Array.from({ length: 60 }, (_, n) => (n % 3 === 0 ? 240 : 5)),
    );
    expect(told.mock.calls).toEqual([[240]]);
  });

  it('is quiet for a clip that stalls at the edge of a group now and then', () => {
    const told = vi.fn();
    const watch = createStepWatch(told);
    steps(
      watch,
      Array.from({ length: 240 }, (_, n) => (n % 60 === 0 ? 900 : 12)),
    );
    expect(told).not.toHaveBeenCalled();
  });

  it('tells of few stalls that take seconds, as a step on average', () => {
    const told = vi.fn();
    const watch = createStepWatch(told);
    steps(
      watch,
      Array.from({ length: 60 }, (_, n) => (n % 40 === 20 ? 8000 : 12)),
    );
    expect(told).toHaveBeenCalledTimes(1);
    expect(told.mock.calls[0]?.[0]).toBeCloseTo((8000 + 23 * 12) / 24, 6);
  });

  it('passes jumps over: every clip may take its time for those', () => {
    const told = vi.fn();
    const watch = createStepWatch(told);
    for (let n = 0; n < 100; n++) watch.asked((n * 77) % 1000, 1000 * n).shown(1000 * n + 700);
    expect(told).not.toHaveBeenCalled();
  });

  it('counts a held key that overtakes the pictures, where most frames asked for are never shown', () => {
    const told = vi.fn();
    const watch = createStepWatch(told);
    // thirty a second asked for, eight a second shown
    for (let n = 0; n < 120; n++) {
      const step = watch.asked(500 - n, n * 33);
      if (n % 4 !== 3) continue;
      step.came();
      step.shown(n * 33 + 25);
    }
    expect(told.mock.calls).toEqual([[124]]);
  });

  it('is quiet for a held key that the pictures keep up with, and for jumps', () => {
    const told = vi.fn();
    const watch = createStepWatch(told);
    for (let n = 0; n < 200; n++) {
      const step = watch.asked(500 - n, n * 33);
      step.came();
      step.shown(n * 33 + 12);
    }
    for (let n = 0; n < 100; n++) {
      watch.asked((n * 77) % 1000, 10_000 + n * 1000).shown(10_700 + n * 1000);
    }
    expect(told).not.toHaveBeenCalled();
  });

  it('tells of pictures that come at once but take long to be drawn, also where the next step is asked for meanwhile', () => {
    const told = vi.fn();
    const watch = createStepWatch(told);
    for (let n = 0; n < 60; n++) {
      const step = watch.asked(n, 150 * n);
      step.came();
      const next = 150 * (n + 1);
      step.shown(next + 10);
    }
    expect(told.mock.calls).toEqual([[160]]);
  });
});
