import { describe, expect, it } from 'vitest';
import { angleLabels } from '../../../renderer/stage/joint-angles';
import { nearestLandmark } from '../../../renderer/stage/nearest-mark';
import { nextToLay } from '../../../renderer/stage/tools/body-line-tool';

const scene = { travel: 'right', level: null, surface: null, scale: null } as const;

describe('angle labels', () => {
  it('say 180° for a straight leg and 90° for a square knee', () => {
    const straight = {
      frame: 0,
      hidden: [],
      points: { hip: { x: 0, y: 0 }, knee: { x: 5, y: 0 }, ankle: { x: 9, y: 0 } },
    };
    expect(angleLabels(straight, scene)).toEqual([{ at: 'knee', words: 'knee 180°' }]);
    const square = { ...straight, points: { ...straight.points, ankle: { x: 5, y: 4 } } };
    expect(angleLabels(square, scene)).toEqual([{ at: 'knee', words: 'knee 90°' }]);
  });

  it('give the trunk a plus with the shoulders higher, whichever way the swimmer goes', () => {
    const right = { frame: 0, hidden: [], points: { hip: { x: 0, y: 10 }, shoulder: { x: 10, y: 0 } } };
    expect(angleLabels(right, scene)).toEqual([{ at: 'shoulder', words: 'trunk 45°' }]);
    const left = { frame: 0, hidden: [], points: { hip: { x: 0, y: 10 }, shoulder: { x: -10, y: 0 } } };
    expect(angleLabels(left, { ...scene, travel: 'left' })).toEqual([{ at: 'shoulder', words: 'trunk 45°' }]);
  });

  it('take the tilt of the level line out, however it was drawn', () => {
    const tilted = { frame: 0, hidden: [], points: { hip: { x: 0, y: 0 }, shoulder: { x: 10, y: 10 } } };
    for (const level of [
      { a: { x: 0, y: 0 }, b: { x: 50, y: 50 } },
      { a: { x: 50, y: 50 }, b: { x: 0, y: 0 } },
    ])
      expect(angleLabels(tilted, { ...scene, level })).toEqual([{ at: 'shoulder', words: 'trunk 0°' }]);
  });

  it('say nothing where points fall together', () => {
    const same = {
      frame: 0,
      hidden: [],
      points: { hip: { x: 1, y: 1 }, knee: { x: 1, y: 1 }, ankle: { x: 9, y: 0 } },
    };
    expect(angleLabels(same, scene)).toEqual([]);
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
