import { describe, expect, it } from 'vitest';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import { cycleCurves } from '#core/measures/plots/cycle-curves';
import { heightCurves } from '#core/measures/plots/height-curves';
import { speedCurve } from '#core/measures/plots/speed-curve';
import { undulationProfile } from '#core/measures/plots/undulation-profile';
import { emptyScene, type Swim } from '#core/swim-file/swim-schema';
import { aMark, aSwim } from '../../../renderer/a-swim';

/** 100 pixels a metre; a kick every 0.5 s; the toe swings 30 px each way, the swimmer goes 1.2 ± 0.2 m/s. */
const rate = 60;
const seconds = 3;
const kick = 0.5;
const omega = (2 * Math.PI) / kick;
const frames = Array.from({ length: rate * seconds }, (_, i) => i);
const hipX = (t: number): number => 100 * (1.2 * t + (0.2 / omega) * Math.sin(omega * t));
const swim: Swim = aSwim({
  clip: { ...aSwim().clip, frameTimes: { ticksPerSecond: rate, firstTick: 0, gaps: [[1, frames.length]] } },
  card: { ...aSwim().card, stroke: 'dolphin-kick', arms: 'stretched' },
  scene: {
    ...emptyScene,
    travel: 'right',
    level: { a: { x: 0, y: 600 }, b: { x: 900, y: 600 } },
    scale: {
      line: { a: { x: 0, y: 500 }, b: { x: 300, y: 500 } },
      metres: 3,
      metresSd: 0,
      preset: null,
      frame: 0,
    },
  },
  events: [0, 1, 2, 3, 4, 5].flatMap((i) => [
    aMark(`t${i}`, 'kick-top', Math.round(rate * kick * i)),
    aMark(`b${i}`, 'kick-bottom', Math.round(rate * kick * (i + 0.5))),
  ]),
  postures: frames.map((frame) => {
    const t = frame / rate;
    const x = 100 + hipX(t);
    const wave = Math.cos(omega * t);
    return {
      frame,
      points: {
        shoulder: { x: x + 60, y: 300 },
        hip: { x, y: 300 },
        knee: { x: x - 40, y: 300 - 10 * wave },
        ankle: { x: x - 80, y: 300 - 20 * wave },
        toe: { x: x - 100, y: 300 - 30 * wave },
      },
      hidden: [],
    };
  }),
});
const known = { swimmer: null, markingError: null };
const context = readingContext(swim, known);

describe('what the plots draw', () => {
  it('is the height as marked and the wave fitted to it', () => {
    const toe = heightCurves(context).find(({ landmark }) => landmark === 'toe');
    expect(toe?.points).toHaveLength(frames.length);
    for (const { time, value } of toe?.points ?? [])
      expect(value).toBeCloseTo(0.3 * Math.cos(omega * time), 9);
    // least squares on a wave of the model leaves nothing
    for (const { time, value } of toe?.fitted ?? [])
      expect(Math.abs(value - 0.3 * Math.cos(omega * time))).toBeLessThan(1e-6);
    expect(toe?.fitted.length).toBeGreaterThan(100);
  });

  it('is the profile of the readings, with what varies between cycles', () => {
    const profile = undulationProfile(computeReadings(context));
    // shoulders and hips are held still: they have no wave, and leave a gap
    expect(profile.map(({ landmark }) => landmark)).toEqual(['knee', 'ankle', 'toe']);
    const toe = profile.at(-1);
    expect(toe?.mean).toBeCloseTo(0.6, 2);
    // every cycle is alike
    expect(toe?.sd).toBeLessThan(0.01);
    expect(toe?.low).toBeLessThan(toe?.mean ?? 0);
  });

  it('is the knee’s angle over the kick, alike in every cycle', () => {
    const curves = cycleCurves(context);
    const knee = curves.find(({ joint }) => joint === 'knee-angle');
    expect(knee?.mean.length).toBeGreaterThan(18);
    for (const { sd } of knee?.mean ?? []) expect(sd).toBeLessThan(0.2);
    // at the top of the kick thigh and shank rise alike: the leg is straight
    expect(knee?.points.find(({ percent }) => percent === 0)?.value).toBeCloseTo(180, 6);
    expect(new Set(knee?.points.map(({ cycle }) => cycle)).size).toBe(5);
  });

  it('is the speed with its surge, and the kicks that go with it', () => {
    const curve = speedCurve(context);
    expect(curve?.of).toBe('hip');
    expect(curve?.unit).toBe('m/s');
    expect(curve?.mean).toBeCloseTo(1.2, 6);
    const truth = (t: number): number => 1.2 + 0.2 * Math.cos(omega * t);
    for (const { time, value } of curve?.fitted ?? []) expect(value).toBeCloseTo(truth(time), 6);
    // a low pass of 6 Hz takes a little off a surge of 2 Hz (Butterworth, two passes: 1/(1 + (2/7.48)⁴) = 0.995), and
    // differences over two frames a little more (sin(ωΔ)/ωΔ = 0.993); ends apart
    const middle = curve?.points.filter(({ time }) => time > 0.5 && time < 2.5) ?? [];
    expect(middle.length).toBeGreaterThan(100);
    for (const { time, value } of middle) expect(Math.abs(value - truth(time))).toBeLessThan(0.006);
    expect(curve?.kicks).toHaveLength(12);
  });

  it('is nothing for a view that cannot show it', () => {
    const front = readingContext({ ...swim, card: { ...swim.card, view: 'front' } }, known);
    expect(heightCurves(front)).toEqual([]);
    expect(cycleCurves(front)).toEqual([]);
    expect(speedCurve(front)).toBeNull();
  });
});
