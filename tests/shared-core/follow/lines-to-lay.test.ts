import { expect, it } from 'vitest';
import { linesToLay } from '#core/follow/lines-to-lay';
import { readingNeeds } from '#core/follow/reading-needs';
import { landmarkNames } from '#core/marks/landmark';
import type { EventMark } from '#core/swim-file/swim-schema';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { aSwim } from '../swim-file/a-swim';

const swim = aSwim();
const clock = { table: tableFromRecord(swim.clip.frameTimes), slowdown: 1 };
const event = (kind: EventMark['kind'], frame: number): EventMark => ({
  from: 'coach',
  refined: null,
  id: `${kind}${frame}`,
  kind,
  frame,
  hand: null,
  breathTo: null,
  metres: null,
});
const line = (frame: number) => ({
  frame,
  hidden: [],
  points: Object.fromEntries(landmarkNames.map((name) => [name, { x: 1, y: 1 }])),
});

it('wants a body line on every second kick top that has none, two frames at 60 a second standing for one', () => {
  const tops = [110, 70, 10, 30, 50, 90].map((frame) => event('kick-top', frame));
  expect(linesToLay({ events: tops, postures: [] }, clock)).toEqual([30, 70, 110]);
  expect(linesToLay({ events: tops, postures: [line(32), line(73)] }, clock)).toEqual([70, 110]);
  const halfALine = { frame: 30, hidden: [], points: { toe: { x: 1, y: 1 } } };
  expect(linesToLay({ events: tops, postures: [halfALine] }, clock)[0]).toBe(30);
  expect(linesToLay({ events: tops.slice(0, 1), postures: [] }, clock)).toEqual([110]);
});

it('wants it on the kick tops at which the hands pass the shoulders', () => {
  const tops = [10, 30, 50, 70].map((frame) => event('kick-top', frame));
  const hands = [11, 52].map((frame) => event('shoulder', frame));
  expect(linesToLay({ events: [...tops, ...hands], postures: [] }, clock)).toEqual([10, 50]);
});

it('needs the toe most where a kick turns and the hand where it goes in', () => {
  const need = readingNeeds([event('kick-bottom', 30), event('entry', 60)], 1 / 60);
  expect([need('toe', 30), need('toe', 33)]).toEqual([20, 20]);
  expect(need('toe', 30)).toBeGreaterThan(need('fingertip', 60));
  expect([need('toe', 34), need('toe', 60), need('hip', 30)]).toEqual([1, 1, 1]);
  expect([need('fingertip', 60), need('fingertip', 30)]).toEqual([1.5, 1]);
});
