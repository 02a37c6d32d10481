import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frameAtTick } from '#core/timeline/frame-table';
import {
  type CodedPicture,
  isEvenRate,
  medianGap,
  orderPictures,
  usualRate,
} from '#core/timeline/picture-order';

const picture = (tick: number, key = false, durationTicks = 10): CodedPicture => ({
  tick,
  key,
  durationTicks,
});

describe('ordering coded pictures into frames', () => {
  it('sorts pictures that are coded in another order than shown', () => {
    // I0 P3 B1 B2, a hand-drawn group
    const order = orderPictures([picture(0, true), picture(30), picture(10), picture(20)], 1000);
    expect(order.table).toEqual({ ticksPerSecond: 1000, starts: [0, 10, 20, 30], endTick: 40 });
    expect(order.codedOfFrame).toEqual([0, 2, 3, 1]);
    expect(order.frameOfCoded).toEqual([0, 3, 1, 2]);
    expect(order.keyOfFrame).toEqual([0, 0, 0, 0]);
  });

  it('decodes the leading pictures of an open group from the group before', () => {
    // I0 B.. then key at 40, coded before the B pictures at 20 and 30 that lean on both sides
    const order = orderPictures(
      [picture(0, true), picture(10), picture(40, true), picture(20), picture(30), picture(50)],
      1000,
    );
    expect(order.table.starts).toEqual([0, 10, 20, 30, 40, 50]);
    expect(order.keyOfFrame).toEqual([0, 0, 0, 0, 2, 2]);
  });

  it('leaves out what an edit list puts before zero, but decodes through it', () => {
    const order = orderPictures([picture(-20, true), picture(-10), picture(0), picture(10)], 1000);
    expect(order.table.starts).toEqual([0, 10]);
    expect(order.codedOfFrame).toEqual([2, 3]);
    expect(order.keyOfFrame).toEqual([0, 0]);
    expect(order.frameOfCoded).toEqual([-1, -1, 0, 1]);
  });

  it('leaves out what starts at or after the end of the edit, and ends the last frame there', () => {
    const order = orderPictures([picture(0, true), picture(10), picture(20), picture(30)], 1000, 25);
    expect(order.table).toEqual({ ticksPerSecond: 1000, starts: [0, 10, 20], endTick: 25 });
  });

  it('ignores an edit list that would hide everything', () => {
    expect(orderPictures([picture(-20, true), picture(-10)], 1000).table.starts).toEqual([-20, -10]);
  });

  it('knows no frame that comes before the first key picture in either order', () => {
    const order = orderPictures([picture(0), picture(40, true), picture(20), picture(30), picture(50)], 1000);
    expect(order.table.starts).toEqual([40, 50]);
    expect(orderPictures([picture(0), picture(10)], 1000).table.starts).toEqual([]);
    expect(orderPictures([], 1000).table.starts).toEqual([]);
  });

  it('keeps of pictures on one tick the first that a decoder gives out', () => {
    const inOrder = orderPictures([picture(0, true), picture(10), picture(10), picture(20)], 1000);
    expect(inOrder.table.starts).toEqual([0, 10, 20]);
    expect(inOrder.codedOfFrame).toEqual([0, 1, 3]);
    expect(frameAtTick(inOrder.table, 10)).toBe(1);
    // the second at 20 was coded before the first, which leans on it
    const reordered = orderPictures([picture(0, true), picture(20), picture(10), picture(20)], 1000);
    expect(reordered.table.starts).toEqual([0, 10, 20]);
    expect(reordered.codedOfFrame).toEqual([0, 2, 3]);
  });

  it('keeps a start that is not zero', () => {
    expect(orderPictures([picture(153600, true), picture(154112)], 15360).table.starts[0]).toBe(153600);
  });

  it('lets a last picture without duration last as long as the median gap', () => {
    const order = orderPictures(
      [picture(0, true, 0), picture(10, false, 0), picture(30, false, 0), picture(40, false, 0)],
      1000,
    );
    expect(order.table.endTick).toBe(50);
    expect(orderPictures([picture(5, true, 0)], 1000).table.endTick).toBe(6);
  });

  it('gives for any order of coding the same strictly rising table, each frame its own picture', () => {
    const clip = fc
      .uniqueArray(fc.integer({ min: 0, max: 5000 }), { minLength: 1, maxLength: 60 })
      .chain((ticks) => fc.shuffledSubarray(ticks, { minLength: ticks.length, maxLength: ticks.length }));
    fc.assert(
      fc.property(clip, (ticks) => {
        const least = Math.min(...ticks);
        const coded = [
          picture(least, true),
          ...ticks.filter((tick) => tick !== least).map((tick) => picture(tick)),
        ];
        const order = orderPictures(coded, 1000);
        expect(order.table.starts).toEqual([...ticks].sort((a, b) => a - b));
        order.codedOfFrame.forEach((place, frame) => {
          expect(coded[place]?.tick).toBe(order.table.starts[frame]);
          expect(order.frameOfCoded[place]).toBe(frame);
          expect(order.keyOfFrame[frame]).toBeLessThanOrEqual(place);
        });
      }),
    );
  });
});

describe('rate of a clip', () => {
  const table = (starts: number[], ticksPerSecond = 1000) => ({
    ticksPerSecond,
    starts,
    endTick: (starts.at(-1) ?? 0) + 10,
  });

  it('calls gaps within one tick even and averages them, so a rounded clock does not blur the rate', () => {
    // 30 pictures a second written in milliseconds: 33, 34, 33
    const thirds = table([0, 33, 67, 100]);
    expect(isEvenRate(thirds)).toBe(true);
    expect(usualRate(thirds)).toBeCloseTo(30, 9);
  });

  it('takes the median where gaps differ', () => {
    const uneven = table([0, 10, 20, 30, 500]);
    expect(isEvenRate(uneven)).toBe(false);
    expect(usualRate(uneven)).toBe(100);
  });

  it('takes the mean of gaps that are alike where a few pictures are missing, as at a break', () => {
    // 30 a second in milliseconds, with two pictures left out near the end
    const starts = [...Array(60).keys()]
      .filter((n) => n !== 55 && n !== 57)
      .map((n) => Math.round((n * 1000) / 30));
    expect(usualRate(table(starts))).toBeCloseTo(30, 1);
  });

  it('takes the mean of the middle two gaps of an even count', () => {
    expect(medianGap([0, 10, 30])).toBe(15);
    expect(medianGap([0, 10, 30, 60])).toBe(20);
    expect(medianGap([5])).toBeNull();
  });

  it('gives a single picture one over its duration', () => {
    expect(usualRate({ ticksPerSecond: 1000, starts: [0], endTick: 40 })).toBe(25);
    expect(isEvenRate({ ticksPerSecond: 1000, starts: [0], endTick: 40 })).toBe(true);
  });
});
