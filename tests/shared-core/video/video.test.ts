import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pairPartOf } from '#core/compare/pair-part';
import { drawingBox } from '#core/drawing/drawing-box';
import type { Swim } from '#core/swim-file/swim-schema';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { sideCrops } from '#core/video/side-crops';
import { sideLayers, standingOps } from '#core/video/side-ops';
import { speedWords } from '#core/video/speed-words';
import { videoStrip } from '#core/video/strip-ops';
import { videoLayout } from '#core/video/video-layout';
import { type VideoPlan, videoPlanSchema } from '#core/video/video-plan';
import { videoRun } from '#core/video/video-run';
import { aSwim } from '../swim-file/a-swim';

/** A stand-in for letters: every letter is 0.6 of its size wide. */
const measure = (words: string, size: number): number => words.length * size * 0.6;

function filmed(width: number, height: number, rate: number, frames = 120): Swim {
  const base = aSwim();
  const frameTimes = {
    ticksPerSecond: 60_000,
    firstTick: 0,
    gaps: [[Math.round(60_000 / rate), frames] as const],
  };
  return { ...base, clip: { ...base.clip, width, height, frameTimes } };
}

const partOf = (swim: Swim) => {
  const clock = { table: tableFromRecord(swim.clip.frameTimes), slowdown: swim.clip.slowdown.factor };
  const stretch = { first: 0, last: clock.table.starts.length - 1 };
  return pairPartOf(swim, { swimmer: null, markingError: null }, clock, stretch, { on: 'frame', frame: 0 });
};

function planOf(swims: readonly Swim[], change: Partial<VideoPlan> = {}): VideoPlan {
  return videoPlanSchema.parse({
    sides: swims.map((swim) => ({
      swimId: swim.id,
      stretch: { first: 0, last: 119 },
      lock: { on: 'frame', frame: 0 },
      frame: 0,
      mirrored: false,
      title: 'A swim',
    })),
    mode: 'time',
    lead: 0,
    seconds: null,
    slow: 1,
    rate: 30,
    width: 1920,
    sameLength: false,
    lay: null,
    show: { bodyLine: true, angles: true, score: true, flashes: true, facts: true },
    caption: 'Words',
    sound: false,
    name: 'video',
    ...change,
  });
}

describe('the pictures of a video', () => {
  it('are as many as the time asked for takes, and each shows the frame under its moment', () => {
    const swims = [filmed(1280, 720, 60), filmed(1280, 720, 120)];
    const run = videoRun(swims.map(partOf), planOf(swims, { seconds: 0.5, slow: 4 }));
    expect(run.pictures).toBe(61);
    // a picture is 1/120 s of true time: half a frame of the first, one of the second
    expect(run.framesOf(0)).toEqual([0, 0]);
    expect(run.framesOf(3)).toEqual([1, 3]);
    expect(run.framesOf(60)).toEqual([30, 60]);
    expect(run.spans).toEqual([
      { first: 0, last: 30 },
      { first: 0, last: 60 },
    ]);
  });

  it('never go backward, in any way of running together', () => {
    const swims = [filmed(640, 360, 50), filmed(640, 360, 240)];
    fc.assert(
      fc.property(
        fc.constantFrom('time' as const, 'cycle' as const, 'free' as const),
        fc.double({ min: 0.25, max: 16, noNaN: true }),
        fc.nat(119),
        (mode, slow, frame) => {
          const plan = planOf(swims, { mode, slow });
          const begun = { ...plan, sides: plan.sides.map((side) => ({ ...side, frame })) };
          const run = videoRun(swims.map(partOf), begun);
          let before: readonly number[] = [0, 0];
          for (let picture = 0; picture < Math.min(run.pictures, 400); picture++) {
            const frames = run.framesOf(picture);
            expect(frames.every((each, i) => each >= (before[i] ?? 0) && each <= 119)).toBe(true);
            before = frames;
          }
        },
      ),
      { numRuns: 30 },
    );
  });
});

describe('the layout of a video', () => {
  it('holds everything in even numbers inside the picture, whatever was filmed', () => {
    const size = fc.integer({ min: 90, max: 3840 });
    fc.assert(
      fc.property(size, size, size, size, fc.boolean(), fc.boolean(), (w1, h1, w2, h2, two, score) => {
        fc.pre(Math.max(w1 / h1, h1 / w1, w2 / h2, h2 / w2) < 4);
        const swims = two ? [filmed(w1, h1, 60), filmed(w2, h2, 60)] : [filmed(w1, h1, 60)];
        const plan = planOf(swims);
        const layout = videoLayout(swims.map(partOf), { ...plan, show: { ...plan.show, score } });
        const boxes = [...layout.cells, ...layout.pictures, ...(layout.strip ? [layout.strip] : [])];
        for (const { x, y, width, height } of boxes) {
          expect([x % 2, y % 2, width % 2, height % 2]).toEqual([0, 0, 0, 0]);
          expect(x >= 0 && y >= 0 && x + width <= layout.width && y + height <= layout.height).toBe(true);
        }
        expect(layout.pictures.length).toBe(swims.length);
        expect(layout.width).toBeLessThanOrEqual(1920);
        layout.pictures.forEach(({ width, height }, i) => {
          const { clip } = swims[i] ?? aSwim();
          // even numbers bend the shape of a small picture by a pixel or two
          expect(Math.abs(height - (width * clip.height) / clip.width)).toBeLessThan(2 + height / 50);
        });
      }),
    );
  });

  it('keeps every layer over its own swim’s room, and the score on its strip', () => {
    const swims = [filmed(1280, 720, 60), filmed(1280, 720, 60)];
    const plan = planOf(swims);
    const parts = swims.map(partOf);
    const layout = videoLayout(parts, plan);
    const run = videoRun(parts, plan);
    for (const which of [0, 1]) {
      const cell = layout.cells[which];
      const { where, flash, light } = sideLayers(parts, plan, layout, [12, 12], which, measure);
      const box = drawingBox([...where, ...flash, ...light], measure);
      expect(box && cell && box.left >= cell.x - 2 && box.right <= cell.x + cell.width + 2).toBe(true);
      expect(flash.some((op) => op.op === 'words' && op.words === 'kick top')).toBe(true);
      expect(light.length).toBe(4);
    }
    const strip = layout.strip && videoStrip(parts, 'time', run, layout.strip, layout.letters);
    const box = strip && drawingBox([...strip.ops, ...strip.playheads([0, 119])], measure);
    expect(box && layout.strip && box.top >= layout.strip.y - 2 && box.bottom <= layout.height + 6).toBe(
      true,
    );
  });

  it('says the speed in the picture whatever else is left out', () => {
    const swims = [filmed(1280, 720, 60)];
    const nothing = { bodyLine: false, angles: false, score: false, flashes: false, facts: false };
    const plan = planOf(swims, { slow: 8, show: nothing, caption: '' });
    const layout = videoLayout(swims.map(partOf), plan);
    const words = standingOps([], plan, layout, speedWords(plan.slow), false, measure);
    expect(words).toMatchObject([{ op: 'words', words: 'slow motion, ⅛ of true speed' }]);
  });
});

it('speeds are said as people say them', () => {
  expect(speedWords(1)).toBe('true speed');
  expect(speedWords(4)).toBe('slow motion, ¼ of true speed');
  expect(speedWords(7)).toBe('slow motion, slowed 7 ×');
  expect(speedWords(0.5)).toBe('2 × true speed');
});

describe('a video that keeps the swimmer in view', () => {
  const body = (x: number, length: number) => {
    const at = (share: number) => ({ x: x + share * length, y: 300 });
    return {
      ...{
        fingertip: at(1),
        wrist: at(0.92),
        elbow: at(0.82),
        shoulder: at(0.68),
        ear: at(0.75),
        hip: at(0.47),
      },
      ...{ knee: at(0.29), ankle: at(0.11), toe: at(0) },
    };
  };
  const swum = (x: number, length: number): Swim => ({
    ...filmed(1280, 720, 60),
    followed: [],
    seen: [],
    postures: Array.from({ length: 120 }, (_, frame) => ({
      frame,
      points: body(x + frame, length),
      hidden: [],
    })),
  });
  const swims = [swum(300, 300), swum(700, 220)];
  const parts = swims.map(partOf);

  it('shows the whole body of each, closer than the film, at the same length where that is asked for', () => {
    for (const sameLength of [false, true]) {
      const plan = planOf(swims, { keepInView: true, sameLength });
      const layout = videoLayout(parts, plan);
      expect(layout.sameLength).toBe(sameLength);
      const crops = sideCrops(parts, plan, layout, [60, 60]);
      const shown = crops.map((crop, which) => {
        const xs = Object.values(body((which === 0 ? 300 : 700) + 60, which === 0 ? 300 : 220)).map(
          ({ x }) => x,
        );
        expect(Math.min(...xs)).toBeGreaterThan(crop.x);
        expect(Math.max(...xs)).toBeLessThan(crop.x + crop.width);
        expect(crop.width).toBeLessThan(800);
        const scale = (layout.pictures[which]?.width ?? 0) / crop.width;
        return (Math.max(...xs) - Math.min(...xs)) * scale;
      });
      if (sameLength) expect((shown[0] ?? 0) / (shown[1] ?? 1)).toBeCloseTo(1, 1);
      // drawn where the picture of the body is
      const ops = sideLayers(parts, plan, layout, [60, 60], 0, measure).line;
      const box = drawingBox(ops, measure);
      expect(box && box.right - box.left).toBeGreaterThan(shown[0] ?? 0);
      expect(box && box.right - box.left).toBeLessThan((layout.cells[0]?.width ?? 0) + 40);
    }
  });

  it('mirrors with its picture, and shows all of it where it is not wanted', () => {
    const plain = planOf(swims, { keepInView: true });
    const [side] = plain.sides;
    const turned = { ...plain, sides: plain.sides.map((each) => ({ ...each, mirrored: each === side })) };
    const layout = videoLayout(parts, plain);
    const [crop] = sideCrops(parts, plain, layout, [60, 60]);
    const [mirrored] = sideCrops(parts, turned, layout, [60, 60]);
    expect((crop?.x ?? 0) + (crop?.width ?? 0)).toBeCloseTo(1280 - (mirrored?.x ?? 0), 6);
    const whole = { x: 0, y: 0, width: 1280, height: 720 };
    expect(sideCrops(parts, planOf(swims), layout, [60, 60])).toEqual([whole, whole]);
  });
});
