import { describe, expect, it } from 'vitest';
import { orderPictures } from '#core/timeline/picture-order';
import { nearestMissing, nextFrameToDecode } from '../../../renderer/video/decoding-plan';
import { type HoldNeeds, holdPlan, neighbourhood } from '../../../renderer/video/hold-plan';

const orderOf = (frames: number, group: number) =>
  orderPictures(
    Array.from({ length: frames }, (_, n) => ({ tick: n * 10, durationTicks: 10, key: n % group === 0 })),
    1000,
  );

/** 1080p in 512 MB, groups of 250, in the middle of a long clip. */
const longGroups: HoldNeeds = {
  walk: { playhead: 1000, towards: -1 },
  frames: 5000,
  capacity: 161,
  halvesToWhole: 4,
  wanted: neighbourhood(60, orderOf(5000, 250)),
  second: 60,
  rested: false,
};
const size = ({ first, last }: { first: number; last: number }): number => last - first + 1;

/** Bytes a full plan holds, in whole pictures. */
const room = (needs: HoldNeeds): number => {
  const { range, whole } = holdPlan(needs);
  return size(whole) + (size(range) - size(whole)) / needs.halvesToWhole;
};

describe('what is worth holding', () => {
  it('is a second to both sides and more than two groups', () => {
    expect(neighbourhood(60, orderOf(600, 12))).toBe(136);
    expect(neighbourhood(60, orderOf(600, 250))).toBe(600);
    expect(neighbourhood(240, orderOf(600, 30))).toBe(496);
  });

  it('is whole pictures only, where the neighbourhood fits', () => {
    const plan = holdPlan({ ...longGroups, wanted: 136 });
    expect(plan.whole).toEqual(plan.range);
    const short = holdPlan({ ...longGroups, frames: 150, walk: { playhead: 10, towards: 0 } });
    expect(short.whole).toEqual(short.range);
  });

  it('is whole pictures only, where halves can’t be made', () => {
    const plan = holdPlan({ ...longGroups, halvesToWhole: 1 });
    expect(plan.whole).toEqual(plan.range);
  });

  it('reaches a whole group ahead of a backward walk, and keeps what is near whole', () => {
    const { range, whole } = holdPlan(longGroups);
    expect(1000 - range.first).toBeGreaterThan(350);
    expect(size(whole)).toBe(48);
    expect(whole.first).toBeLessThan(1000);
  });

  it('never takes more room than there is, whatever the walk', () => {
    for (const towards of [-1, 0, 1] as const)
      for (const rested of [true, false])
        for (const playhead of [0, 3, 1000, 4999])
          for (const capacity of [3, 10, 37, 161]) {
            const needs = { ...longGroups, walk: { playhead, towards }, rested, capacity };
            const { range, whole } = holdPlan(needs);
            expect(room(needs)).toBeLessThanOrEqual(capacity);
            expect(whole.first >= range.first && whole.last <= range.last).toBe(true);
            expect(range.first >= 0 && range.last < 5000).toBe(true);
            expect(playhead >= whole.first && playhead <= whole.last).toBe(true);
          }
  });

  it('is a second both ways at rest, wherever the walk came from: at 240 pictures a second, in 4K, in short groups', () => {
    for (const towards of [-1, 0, 1] as const)
      for (const [rate, group, capacity, halvesToWhole] of [
        [240, 240, 161, 4],
        // 4K in 512 MB, each picture held at half size too
        [30, 60, 30, 5],
        [60, 12, 161, 4],
      ] as const) {
        const wanted = neighbourhood(rate, orderOf(5000, group));
        const walk = { playhead: 1000, towards };
        const { around } = holdPlan({
          ...longGroups,
          ...{ wanted, walk, capacity, halvesToWhole, second: rate, rested: true },
        });
        expect([around.first, around.last]).toEqual([1000 - rate, 1000 + rate]);
      }
  });
});

describe('when the group before is begun', () => {
  const order = orderOf(5000, 250);
  it('is at once where most of it can be held', () => {
    const { range } = holdPlan({ ...longGroups, walk: { playhead: 1100, towards: -1 } });
    const walk = { playhead: 1100, towards: -1 } as const;
    const there = (frame: number): boolean => frame >= 1000;
    expect(nextFrameToDecode(walk, range, order, null, there)).toBe(999);
  });

  it('waits where little of it could be held yet', () => {
    const walk = { playhead: 1100, towards: -1 } as const;
    expect(nextFrameToDecode(walk, { first: 940, last: 1140 }, order, null, (frame) => frame >= 1000)).toBe(
      null,
    );
  });

  it('ahead of a forward walk, a group that is far off is begun just in time', () => {
    const range = { first: 800, last: 1400 };
    const at = (playhead: number): number | null =>
      nextFrameToDecode(
        { playhead, towards: 1 },
        range,
        order,
        null,
        (frame) => frame < 1240 || frame >= 1250,
        60,
      );
    // 240 pictures from its group's key, at about the pace of the walk
    expect(at(900)).toBeNull();
    expect(at(930)).toBe(1240);
  });
});

describe('where the coach has stopped', () => {
  const order = orderOf(5000, 250);
  const around = { first: 1040, last: 1160 };
  const walk = { playhead: 1100, towards: 0 } as const;

  it('what is missing behind comes before what is farther ahead than a second', () => {
    const there = (frame: number): boolean => frame >= 1080 && frame <= 1160;
    expect(nearestMissing(walk, around, order, { start: 1000, next: 1161 }, there)).toBe(1079);
    expect(nearestMissing(walk, around, order, null, (frame) => frame >= 1040)).toBe(null);
  });

  it('what the running decoder gives comes first', () => {
    const there = (frame: number): boolean => frame === 1100;
    expect(nearestMissing(walk, around, order, { start: 1000, next: 1101 }, there)).toBe(1101);
    expect(nearestMissing({ ...walk, towards: -1 }, around, order, null, there)).toBe(1099);
  });
});
