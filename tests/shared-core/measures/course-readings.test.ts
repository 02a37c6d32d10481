import { describe, expect, it } from 'vitest';
import { strokeCountReadings } from '#core/measures/events/stroke-count';
import { underwaterPartReadings } from '#core/measures/events/underwater-part';
import type { ComputedReading, Reading } from '#core/measures/reading';
import type { EventMark, Swim } from '#core/swim-file/swim-schema';
import { aMark, aSwim } from '#tests/renderer/a-swim';
import { contextOf } from './drawn-swim';

function filmed(events: readonly EventMark[]): Swim {
  const base = aSwim();
  const frameTimes = { ticksPerSecond: 50, firstTick: 0, gaps: [[1, 2000]] as [number, number][] };
  return { ...base, clip: { ...base.clip, frameTimes }, events: [...events] };
}

const find = (readings: readonly Reading[], id: string): Reading | undefined =>
  readings.find((each) => each.id === id);

function computed(readings: readonly Reading[], id: string): ComputedReading {
  const reading = find(readings, id);
  if (reading?.status !== 'computed') throw new Error(`${id}: ${JSON.stringify(reading)}`);
  return reading;
}

const metres = (id: string, frame: number, at: number): EventMark => ({
  ...aMark(id, 'distance-mark', frame),
  metres: at,
});

/** Push-off at 100, breakout at 400 (6.00 s); kicks slow down from 20 to 25 to 40 frames by thirds. */
const underwater = [
  aMark('push', 'push-off', 100),
  aMark('out', 'breakout', 400),
  ...[110, 130, 150, 170, 190].map((at, i) => aMark(`a${i}`, 'kick-bottom', at)),
  ...[215, 240, 265, 290].map((at, i) => aMark(`b${i}`, 'kick-bottom', at)),
  ...[310, 350, 390].map((at, i) => aMark(`c${i}`, 'kick-bottom', at)),
];

describe('underwater part', () => {
  it('tells time, kicks, and how the kick keeps its rate', () => {
    const readings = underwaterPartReadings(contextOf(filmed(underwater), 0));
    expect(computed(readings, 'underwater-time').value).toBeCloseTo(6, 12);
    expect(computed(readings, 'underwater-kicks').value).toBe(12);
    expect(computed(readings, 'underwater-kick-frequency-first-third').value).toBeCloseTo(2.5, 12);
    expect(computed(readings, 'underwater-kick-frequency-middle-third').value).toBeCloseTo(2, 12);
    expect(computed(readings, 'underwater-kick-frequency-last-third').value).toBeCloseTo(1.25, 12);
  });

  it('puts the breakout between two distance marks, and says when 15 m may be passed', () => {
    // by hand: breakout half way between the marks of 10 and 16 m
    const near = underwaterPartReadings(
      contextOf(filmed([...underwater, metres('p', 300, 10), metres('q', 500, 16)]), 0.01),
    );
    expect(computed(near, 'underwater-distance-marks').value).toBeCloseTo(13, 12);
    expect(computed(near, 'underwater-distance-marks').notes).not.toContain('beyond-15-m');
    const far = underwaterPartReadings(
      contextOf(filmed([...underwater, metres('p', 300, 12), metres('q', 500, 17.8)]), 0.01),
    );
    // 14.9 m, but not surely under 15
    expect(computed(far, 'underwater-distance-marks').value).toBeCloseTo(14.9, 12);
    expect(computed(far, 'underwater-distance-marks').notes).toContain('beyond-15-m');
  });

  it('names the end that is not marked', () => {
    const readings = underwaterPartReadings(contextOf(filmed(underwater.slice(1)), 0));
    expect(find(readings, 'underwater-time')).toMatchObject({ reasons: [{ kind: 'push-off' }] });
  });
});

describe('counts', () => {
  const length = [
    aMark('out', 'breakout', 90),
    ...[100, 155, 210, 265, 320].map((at, i) => aMark(`e${i}`, 'entry', at)),
    ...[130, 240].map((at, i) => aMark(`b${i}`, 'breath', at)),
    aMark('wall', 'touch', 380),
  ];

  it('counts the strokes of a whole length and how often the swimmer breathes', () => {
    const readings = strokeCountReadings(contextOf(filmed(length), 0.01));
    expect(computed(readings, 'stroke-count').value).toBe(5);
    expect(computed(readings, 'breathing-every').value).toBe(2);
  });

  it('is never of zero width', () => {
    const { interval } = computed(strokeCountReadings(contextOf(filmed(length), 0.01)), 'stroke-count');
    expect(interval.high - interval.low).toBeCloseTo(1, 6);
  });

  it('does not count a part of a length as a whole', () => {
    const readings = strokeCountReadings(contextOf(filmed(length.slice(0, -1)), 0.01));
    expect(find(readings, 'stroke-count')).toMatchObject({ reasons: [{ kind: 'touch' }] });
  });
});
