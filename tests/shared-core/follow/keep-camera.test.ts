import { describe, expect, it } from 'vitest';
import { bodyBetween } from '#core/follow/body-between';
import { keepCamera } from '#core/follow/keep-camera';
import type { CameraRun } from '#core/swim-file/swim-schema';

const run = (first: number, last: number, by = 0): CameraRun => ({
  frames: [first, last],
  rows: [100],
  moved: [
    [
      [0, 0],
      [by, 0],
    ],
  ],
  turned: null,
});

describe('what is known of the camera after following again', () => {
  it('is a long look, where there is one: what moved slowly adds up in it', () => {
    const whole = run(0, 200, 30);
    expect(keepCamera([whole], [{ first: 20, last: 40 }], [run(20, 40, 1)])).toEqual([whole]);
    expect(keepCamera([whole], [{ first: 0, last: 40 }], [run(0, 40, 1)])).toEqual([whole]);
  });

  it('is the new look where it goes as far or farther, and both where they are apart', () => {
    const [old, fresh] = [run(10, 30, 1), run(10, 30, 2)];
    expect(keepCamera([old], [{ first: 10, last: 30 }], [fresh])).toEqual([fresh]);
    expect(keepCamera([old], [{ first: 0, last: 60 }], [run(0, 60, 3)])).toEqual([run(0, 60, 3)]);
    expect(keepCamera([run(40, 60), old], [{ first: 30, last: 40 }], [run(30, 40, 5)])).toEqual([
      old,
      run(30, 40, 5),
      run(40, 60),
    ]);
  });
});

describe('a body between its postures', () => {
  const posture = (frame: number, x: number) => ({ frame, points: { hip: { x, y: 50 } }, hidden: [] });
  it('goes straight from one to the next, and stays before the first and after the last', () => {
    const postures = [posture(10, 100), posture(20, 200)];
    const at = (frame: number) => bodyBetween(postures, frame)[0]?.x;
    expect([at(0), at(10), at(15), at(19), at(20), at(90)]).toEqual([100, 100, 150, 190, 200, 200]);
    expect(bodyBetween([], 5)).toEqual([]);
  });

  it('takes a landmark that only one of them has from there', () => {
    const toe = { frame: 20, points: { toe: { x: 7, y: 8 } }, hidden: [] };
    expect(bodyBetween([posture(10, 100), toe], 15)).toEqual([
      { x: 100, y: 50 },
      { x: 7, y: 8 },
    ]);
  });
});
