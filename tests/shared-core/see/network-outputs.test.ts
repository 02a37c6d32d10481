import { describe, expect, it } from 'vitest';
import { onePerBody, readDetections } from '#core/see/detect-output';
import { type BodyMask, maskEnd } from '#core/see/mask-end';
import { readPose } from '#core/see/pose-output';

const square = { x: 300, y: 200, side: 256, angle: 0 };

describe('the landmark network’s points', () => {
  it('are put where they lie in the picture, with shares out of logits and the next square', () => {
    const values = new Float32Array(39 * 5);
    values.set([10, 20, 0, 2, -2], 5 * 7);
    values.set([128, 128, 0, 0, 0], 5 * 33);
    values.set([128, 28, 0, 0, 0], 5 * 34);
    const pose = readPose(values, 0.9, square);
    expect(pose.points).toHaveLength(33);
    expect(pose.points[7]).toMatchObject({ x: 182, y: 92 });
    expect(pose.points[7]?.visible).toBeCloseTo(0.8808, 4);
    expect(pose.points[7]?.present).toBeCloseTo(0.1192, 4);
    expect(pose.next).toMatchObject({ x: 300, y: 200, side: 250 });
    expect(pose.next.angle).toBeCloseTo(0);
  });

  it('are refused when there are not as many', () => {
    expect(() => readPose(new Float32Array(10), 1, square)).toThrow('195');
  });
});

describe('the detector’s boxes', () => {
  const boxes = (): Float32Array => new Float32Array(2254 * 12);
  const scores = (): Float32Array => new Float32Array(2254).fill(-20);
  const window = { x: 500, y: 400, side: 448, angle: 0 };

  it('lie about the middles of their layers’ places', () => {
    const [own, sure] = [boxes(), scores()];
    // the first box of the second layer (16 pixels a place): its middle is 8 pixels in
    const second = 28 * 28 * 2;
    own.set([0, 0, 0, 0, 4, 6, 4, -24], 12 * second);
    sure[second] = 3;
    const [found, ...more] = readDetections(own, sure, window, 0.5);
    expect(more).toEqual([]);
    expect(found?.sure).toBeCloseTo(0.9526, 4);
    // two picture pixels to one of the detector's
    expect(found?.square).toMatchObject({ x: 500 - 224 + 24, y: 400 - 224 + 28 });
    expect(found?.square.side).toBeCloseTo(2 * 1.25 * 60);
  });

  it('reach the last of their 2254, in the coarsest layer’s last place', () => {
    const [own, sure] = [boxes(), scores()];
    own.set([0, 0, 0, 0, 0, 0, 0, -10], 12 * 2253);
    sure[2253] = 1;
    const [found] = readDetections(own, sure, { x: 112, y: 112, side: 224, angle: 0 }, 0.5);
    expect(found?.square).toMatchObject({ x: 208, y: 208 });
  });

  it('are one for each body, the surest', () => {
    const at = (x: number, sure: number) => ({ square: { x, y: 0, side: 100, angle: 0 }, sure });
    expect(onePerBody([at(0, 0.6), at(5, 0.9), at(300, 0.7)]).map(({ sure }) => sure)).toEqual([0.9, 0.7]);
  });

  it('are refused when there are not as many', () => {
    expect(() => readDetections(new Float32Array(12), new Float32Array(1), window, 0.5)).toThrow('12 and 1');
  });
});

/** An outline made of thick lines: over zero inside. */
function mask(
  lines: readonly {
    readonly a: readonly [number, number];
    readonly b: readonly [number, number];
    readonly half: number;
  }[],
): BodyMask {
  const size = 256;
  const values = new Float32Array(size * size).fill(-5);
  for (let y = 0; y < size; y++)
    for (let x = 0; x < size; x++)
      for (const { a, b, half } of lines) {
        const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
        const on = Math.max(
          0,
          Math.min(1, ((x + 0.5 - a[0]) * dx + (y + 0.5 - a[1]) * dy) / (dx * dx + dy * dy)),
        );
        if (Math.hypot(x + 0.5 - a[0] - on * dx, y + 0.5 - a[1] - on * dy) <= half) values[y * size + x] = 5;
      }
  return { size, values };
}

describe('where a limb ends in the outline', () => {
  const whole = { x: 128, y: 128, side: 256, angle: 0 };
  const leg = { a: [40, 128], b: [180, 140], half: 6 } as const;
  const ankle = { x: 150, y: 137 };
  const along = { x: 10, y: 1 };

  it('is its tip, to a pixel or so, in a turned and larger square too', () => {
    // the round end of the line reaches half its width beyond
    const tip = { x: 180 + 6 * 0.996, y: 140 + 6 * 0.085 };
    const end = maskEnd(mask([leg]), whole, ankle, along, 70);
    expect(Math.hypot((end?.x ?? 0) - tip.x, (end?.y ?? 0) - tip.y)).toBeLessThan(1.2);
    // the same outline seen in a square that lies turned by a quarter and twice as large
    const turned = { x: 900, y: 500, side: 512, angle: Math.PI / 2 };
    const place = (x: number, y: number) => ({ x: 900 - 2 * (y - 128), y: 500 + 2 * (x - 128) });
    const [joint, far, real] = [place(150, 137), place(160, 138), place(tip.x, tip.y)];
    const other = maskEnd(mask([leg]), turned, joint, { x: far.x - joint.x, y: far.y - joint.y }, 140);
    expect(Math.hypot((other?.x ?? 0) - real.x, (other?.y ?? 0) - real.y)).toBeLessThan(2.4);
  });

  it('belongs to what hangs together with the joint', () => {
    const alone = maskEnd(mask([leg]), whole, ankle, along, 70);
    const beside = { a: [195, 141], b: [215, 143], half: 5 } as const;
    expect(maskEnd(mask([leg, beside]), whole, ankle, along, 70)).toEqual(alone);
  });

  it('is not told where something else hangs on, nothing goes on, or the joint is not inside', () => {
    const on = { a: [40, 128], b: [250, 146], half: 6 } as const;
    expect(maskEnd(mask([on]), whole, ankle, along, 70)).toBeNull();
    expect(maskEnd(mask([leg]), whole, { x: 186.5, y: 140.5 }, along, 70)).toBeNull();
    expect(maskEnd(mask([leg]), whole, { x: 150, y: 30 }, along, 70)).toBeNull();
    expect(maskEnd(mask([leg]), whole, ankle, { x: 0, y: 0 }, 70)).toBeNull();
  });
});
