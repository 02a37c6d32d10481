import { expect, it } from 'vitest';
import { passWindow } from '../../../renderer/open-swim/pass-window';

const clock = {
  table: { ticksPerSecond: 60, starts: Array.from({ length: 300 }, (_, i) => i), endTick: 300 },
  slowdown: 1,
};

it('loops half a second around the playhead before anything is marked', () => {
  const { first, last } = passWindow(0, null, 60, [], true, clock);
  expect((last - first) / 60).toBeCloseTo(0.5, 2);
  expect((first + last) / 2).toBe(60);
});

it('looks where the next moment is expected, by the swim’s own tempo once two entries are marked', () => {
  const entries = [
    { kind: 'entry' as const, frame: 0 },
    { kind: 'entry' as const, frame: 60 },
  ];
  // a stroke of one second: the exit comes 0.73 s after the entry
  const { first, last } = passWindow(7, { step: 0, frame: 60 }, 0, entries, true, clock);
  expect((first + last) / 2 / 60).toBeCloseTo(1.73, 1);
});

it('stays inside the clip at its ends', () => {
  expect(passWindow(0, null, 0, [], true, clock).first).toBe(0);
  const end = passWindow(9, { step: 8, frame: 298 }, 298, [], true, clock);
  expect(end.last).toBe(299);
  expect(end.first).toBeLessThan(end.last);
});
