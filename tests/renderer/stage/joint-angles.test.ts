import { describe, expect, it } from 'vitest';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import type { Posture } from '#core/swim-file/swim-schema';
import { angleLabels } from '#core/drawing/joint-angles';
import { nearestLandmark } from '../../../renderer/stage/nearest-mark';
import { nextToLay } from '../../../renderer/stage/tools/body-line-tool';
import { aSwim } from '../a-swim';

const swim = aSwim();

describe('angle labels', () => {
  it('say 180° for a straight leg and 90° for a square knee', () => {
    const straight: Posture = {
      frame: 0,
      hidden: [],
      points: { hip: { x: 9, y: 0 }, knee: { x: 5, y: 0 }, ankle: { x: 0, y: 0 } },
    };
    expect(angleLabels(straight, swim)).toEqual([{ at: 'knee', words: 'knee 180°' }]);
    const square: Posture = { ...straight, points: { ...straight.points, ankle: { x: 5, y: -4 } } };
    expect(angleLabels(square, swim)).toEqual([{ at: 'knee', words: 'knee 90°' }]);
  });

  it('give the trunk a plus with the shoulders higher, whichever way the swimmer goes', () => {
    const right: Posture = {
      frame: 0,
      hidden: [],
      points: { hip: { x: 0, y: 10 }, shoulder: { x: 10, y: 0 } },
    };
    expect(angleLabels(right, swim)).toEqual([{ at: 'shoulder', words: 'trunk 45°' }]);
    const left: Posture = {
      frame: 0,
      hidden: [],
      points: { hip: { x: 0, y: 10 }, shoulder: { x: -10, y: 0 } },
    };
    expect(angleLabels(left, { ...swim, scene: { ...swim.scene, travel: 'left' } })).toEqual([
      { at: 'shoulder', words: 'trunk 45°' },
    ]);
  });

  it('say what the readings say of the same posture', () => {
    const posture: Posture = {
      frame: 4,
      hidden: [],
      points: {
        shoulder: { x: 799, y: 268 },
        hip: { x: 599, y: 287 },
        knee: { x: 451, y: 353 },
        ankle: { x: 328, y: 292 },
        toe: { x: 268, y: 243 },
      },
    };
    const one = aSwim({ postures: [posture] });
    const readings = computeReadings(readingContext(one, { swimmer: null, markingError: null }));
    const value = (id: string): number => {
      const reading = readings.find((each) => each.id === id);
      return reading?.status === 'computed' ? Math.round(reading.value) : Number.NaN;
    };
    const labels = angleLabels(posture, one).map((label) => label.words);
    expect(labels).toContain(`knee ${value('knee-angle')}°`);
    expect(labels).toContain(`hip ${value('hip-angle')}°`);
    expect(labels).toContain(`ankle ${value('ankle-angle')}°`);
    expect(labels).toContain(`trunk ${value('trunk-pitch')}°`);
  });

  it('are silent where points fall together, without a direction of travel, and in a view from the front', () => {
    const same: Posture = {
      frame: 0,
      hidden: [],
      points: { hip: { x: 1, y: 1 }, knee: { x: 1, y: 1 }, ankle: { x: 9, y: 0 } },
    };
    expect(angleLabels(same, swim)).toEqual([]);
    const bent: Posture = { ...same, points: { ...same.points, hip: { x: 0, y: 9 } } };
    expect(angleLabels(bent, swim)).toHaveLength(1);
    expect(angleLabels(bent, { ...swim, scene: { ...swim.scene, travel: null } })).toEqual([]);
    expect(angleLabels(bent, { ...swim, card: { ...swim.card, view: 'front' } })).toEqual([]);
  });
});

describe('laying a body line', () => {
  it('asks from the fingertip on, skipping what is laid or hidden', () => {
    expect(nextToLay(null)).toBe('fingertip');
    expect(nextToLay({ frame: 0, points: { fingertip: { x: 0, y: 0 } }, hidden: ['wrist'] })).toBe('elbow');
  });

  it('picks the nearest landmark within reach only', () => {
    const posture = { frame: 0, points: { hip: { x: 0, y: 0 }, knee: { x: 8, y: 0 } }, hidden: [] };
    expect(nearestLandmark(posture, { x: 5, y: 0 }, 10)).toBe('knee');
    expect(nearestLandmark(posture, { x: 50, y: 0 }, 10)).toBeNull();
  });
});
