import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Rect } from '#core/drawing/composition';
import { closeView, pictureView } from '#core/drawing/picture-view';
import { swimmerWindows } from '#core/drawing/swimmer-windows';
import type { LandmarkName } from '#core/marks/landmark';
import { parseSwim } from '#core/swim-file/swim-file';
import type { Posture, Swim } from '#core/swim-file/swim-schema';
import type { Point } from '#core/units/point';
import { truthSchema } from '../../../sample-clips/truth-schema';

const read = (name: string): string =>
  readFileSync(fileURLToPath(new URL(`../../../sample-clips/${name}`, import.meta.url)), 'utf8');
function sample(name: string): Swim {
  const parsed = parseSwim(read(`library/swims/${name}/swim.json`));
  if (!parsed.ok) throw new Error(name);
  return parsed.value;
}

const [width, height, rate, frames] = [1920, 1080, 30, 150];
const plain = sample('sample-phone-portrait');
const clip: Swim['clip'] = {
  ...plain.clip,
  ...{ width, height },
  slowdown: { ...plain.clip.slowdown, factor: 1 },
  frameTimes: { ticksPerSecond: rate, firstTick: 0, gaps: [[1, frames]] },
};

interface Swum {
  readonly from: Point;
  readonly speed: number;
  readonly tall: number;
  readonly kick: number;
  readonly hertz: number;
}
/** A body that glides to the right, arms stretched, and kicks; head first. */
function bodyAt({ from, speed, tall, kick, hertz }: Swum, frame: number): Required<Posture['points']> {
  const t = frame / rate;
  const at = (along: number, sway: number): Point => ({
    x: from.x + speed * t - along * tall,
    y: from.y + sway * kick * tall * Math.sin(2 * Math.PI * hertz * t - 4 * along),
  });
  const places: Record<LandmarkName, Point> = {
    ...{ fingertip: at(-0.44, 0.1), wrist: at(-0.33, 0.1), elbow: at(-0.18, 0.1), shoulder: at(0, 0.1) },
    ...{
      ear: at(-0.11, 0.1),
      hip: at(0.288, 0.3),
      knee: at(0.53, 0.6),
      ankle: at(0.77, 0.9),
      toe: at(0.92, 1),
    },
  };
  return places;
}
const whole = { x: 0, y: 0, width, height };
const swum = (how: Swum, marked: (frame: number) => boolean): Parameters<typeof swimmerWindows>[0] => ({
  postures: Array.from({ length: frames }, (_, frame) => frame)
    .filter(marked)
    .map((frame) => ({ frame, points: bodyAt(how, frame), hidden: [] })),
  followed: [],
  seen: [],
  clip,
});
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const swims = fc.record({
  from: fc.record({ x: number(300, 900), y: number(200, 880) }),
  ...{ speed: number(-200, 300), tall: number(100, 500), kick: number(0.05, 0.3), hertz: number(0.8, 3) },
});
const holds = ({ x, y, width, height }: Rect, point: Point): boolean =>
  point.x >= x && point.x <= x + width && point.y >= y && point.y <= y + height;

describe('keeping the swimmer in view', () => {
  it('never cuts the true swimmer of a sample, marked on few frames, and comes closer', () => {
    for (const name of ['sample-butterfly-late-kick', 'sample-fins-slow-motion', 'sample-kick-on-back']) {
      const swim = sample(name);
      const truth = truthSchema.parse(JSON.parse(read(`truth/${name}.json`)));
      const windows = swimmerWindows(swim);
      let closest = 0;
      truth.points.forEach((row, frame) => {
        const room = windows.windowOn(frame);
        const { crop } = pictureView(room, swim.clip, { x: 0, y: 0, width: 800, height: 500 });
        closest = Math.max(closest, swim.clip.width / crop.width);
        for (let i = 0; i < row.length; i += 2) {
          const point = { x: row[i] ?? 0, y: row[i + 1] ?? 0 };
          if (holds({ x: 0, y: 0, ...swim.clip }, point) && !holds(crop, point))
            throw new Error(`${name} is cut on frame ${frame}`);
        }
      });
      expect(closest, name).toBeGreaterThan(1.5);
    }
  });

  it('holds the whole body on every frame and moves evenly, however it kicks and glides', () => {
    const marks = fc.tuple(swims, fc.integer({ min: 1, max: 12 }));
    fc.assert(
      fc.property(marks, ([how, every]) => {
        const windows = swimmerWindows(swum(how, (frame) => frame % every === 0));
        const shown = Array.from({ length: frames - every }, (_, frame) => windows.windowOn(frame));
        shown.forEach((window, frame) => {
          const before = shown[frame - 1];
          if (!window) throw new Error(`no window on ${frame}`);
          for (const point of Object.values(bodyAt(how, frame)))
            if (holds(whole, point) && !holds(window, point)) throw new Error(`cut on ${frame}`);
          if (!before || frame + 20 > frames - every) return;
          // a size, and a place beside the glide, change by less than a fiftieth of the body's height from frame to frame
          const glide = how.speed / rate;
          const middle = window.x + window.width / 2 - before.x - before.width / 2 - glide;
          const moves = [middle, window.width - before.width, window.height - before.height];
          if (moves.some((move) => Math.abs(move) >= how.tall / 50)) throw new Error(`${moves} on ${frame}`);
        });
      }),
      { numRuns: 25 },
    );
  });

  it('neither lags behind a glide nor breathes with the kick', () => {
    const how = { from: { x: 500, y: 500 }, speed: 150, tall: 300, kick: 0.25, hertz: 2 };
    const windows = swimmerWindows(swum(how, () => true));
    const middle = [40, 50, 60, 70, 80, 90].map((frame) => windows.windowOn(frame));
    middle.forEach((window, i) => {
      if (!window) throw new Error('a window');
      const drift = window.x + window.width / 2 - ((middle[0]?.x ?? 0) + (middle[0]?.width ?? 0) / 2);
      expect(Math.abs(drift - (150 * 10 * i) / rate)).toBeLessThan(2);
      expect(window.width / (middle[0]?.width ?? 1)).toBeCloseTo(1, 2);
      expect(window.height / (middle[0]?.height ?? 1)).toBeCloseTo(1, 1);
    });
  });

  it('shows the whole picture where the body is not known, and widens to it evenly', () => {
    const how = { from: { x: 600, y: 500 }, speed: 60, tall: 250, kick: 0.2, hertz: 1.5 };
    const windows = swimmerWindows(swum(how, (frame) => frame < 60 || frame > 110));
    expect(windows.windowOn(85)).toBeNull();
    expect(windows.roomOn(85)).toBeNull();
    const widths = Array.from({ length: 60 }, (_, frame) => windows.windowOn(frame)?.width ?? 0);
    expect(widths[59]).toBeGreaterThan(0.95 * width);
    expect(widths[40]).toBeLessThan(0.45 * width);
    for (let frame = 41; frame < 60; frame++)
      expect((widths[frame] ?? 0) - (widths[frame - 1] ?? 0)).toBeLessThan(0.09 * width);
    expect(swimmerWindows({ ...swum(how, () => false) }).windowOn(3)).toBeNull();
  });

  it('fills the stage with a swimmer who fills a quarter of the picture', () => {
    const tall = width / 4 / 1.36;
    const how = { from: { x: 500, y: 500 }, speed: 100, tall, kick: 0.15, hertz: 2 };
    const stage = { width: 900, height: 506 };
    const { scale, x } = closeView(swimmerWindows(swum(how, () => true)).windowOn(75), clip, stage);
    expect((scale * width) / 4 / stage.width).toBeGreaterThan(0.75);
    const body = Object.values(bodyAt(how, 75)).map((point) => point.x * scale + x);
    expect(Math.min(...body)).toBeGreaterThan(0);
    expect(Math.max(...body)).toBeLessThan(stage.width);
  });

  it('goes by seen points where nothing else is known, with room for how far they may be off', () => {
    const how = { from: { x: 600, y: 500 }, speed: 0, tall: 250, kick: 0, hertz: 1 };
    const seen = (sd: number) =>
      Object.entries(bodyAt(how, 0)).map(([landmark, { x, y }]) => ({
        landmark: landmark as LandmarkName,
        frame: 0,
        points: Array.from({ length: frames }, (): [number, number, number] => [x, y, sd]),
      }));
    const of = (sd: number) => swimmerWindows({ ...swum(how, () => false), seen: seen(sd) }).windowOn(75);
    expect((of(10)?.width ?? 0) - (of(0)?.width ?? 0)).toBeCloseTo(60, 3);
  });
});
