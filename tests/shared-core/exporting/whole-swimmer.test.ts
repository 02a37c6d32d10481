import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pairPartOf } from '#core/compare/pair-part';
import type { Composition, Rect } from '#core/drawing/composition';
import { pictureView } from '#core/drawing/picture-view';
import { withoutSeen } from '#core/drawing/shown-line';
import { shownHeight, swimmerRoom } from '#core/drawing/swimmer-room';
import { swimmerWindows } from '#core/drawing/swimmer-windows';
import { composeFan } from '#core/exporting/compose-fan';
import { composeSheet } from '#core/exporting/compose-sheet';
import { composePairStill, composeStill } from '#core/exporting/compose-still';
import { cycleFrames } from '#core/exporting/cycle-frames';
import { type ExportSource, exportSource } from '#core/exporting/export-source';
import { composeHandout } from '#core/handout/compose-handout';
import { firstHandout } from '#core/handout/first-handout';
import { papers } from '#core/handout/handout-file';
import { type LandmarkName, landmarkNames } from '#core/marks/landmark';
import { hasPoint } from '#core/swim-file/has-point';
import { parseSwim } from '#core/swim-file/swim-file';
import type { Posture, Swim } from '#core/swim-file/swim-schema';
import type { Point } from '#core/units/point';
import { videoLayout } from '#core/video/video-layout';
import { truthSchema } from '../../../sample-clips/truth-schema';
import { videoPlanSchema } from '#core/video/video-plan';

const measure = (words: string, size: number): number => words.length * size * 0.5;
const nobody = { swimmer: null, markingError: null };

function sample(name: string): Swim {
  const file = new URL(`../../../sample-clips/library/swims/${name}/swim.json`, import.meta.url);
  const parsed = parseSwim(readFileSync(fileURLToPath(file), 'utf8'));
  if (!parsed.ok) throw new Error('a sample');
  return parsed.value;
}
const swim = sample('sample-butterfly-together');

/** The swim with some landmarks unknown on every frame. */
function without(lost: readonly LandmarkName[]): Swim {
  return {
    ...swim,
    postures: swim.postures.map((posture) => ({
      ...posture,
      points: Object.fromEntries(
        Object.entries(posture.points).filter(([name]) => !lost.includes(name as LandmarkName)),
      ),
    })),
    followed: swim.followed.filter(({ landmark }) => !lost.includes(landmark)),
  };
}

/** Every page with film on it that Submark makes by itself, of one swim. */
function everyPage(source: ExportSource): readonly (readonly [string, Composition])[] {
  const middle = Math.floor(source.clock.table.starts.length / 2);
  const laid = [...source.lines.keys()].sort((a, b) => a - b);
  const frames = [laid[0] ?? 0, laid[Math.floor(laid.length / 2)] ?? 0, laid.at(-1) ?? 0];
  const side = { source, frame: middle, chosen: [] };
  return [
    ...papers.flatMap((paper) =>
      [1, 2, 3].map((count): readonly [string, Composition] => [
        `handout, ${paper}, ${count}`,
        composeHandout({ ...firstHandout(source, paper), frames: frames.slice(0, count) }, source, measure),
      ]),
    ),
    ...[8, 12].flatMap((pictures) => {
      const cycle = cycleFrames(source.context.events, source.clock, middle, pictures);
      return cycle ? [[`sheet of ${pictures}`, composeSheet(source, cycle, [], measure)] as const] : [];
    }),
    ...frames.map((frame) => ['still', composeStill(source, frame, [], measure)] as const),
    ...frames.map((frame) => ['close still', composeStill(source, frame, [], measure, true)] as const),
    ['still of two', composePairStill([side, side], measure)] as const,
    ['close still of two', composePairStill([side, side], measure, true)] as const,
  ];
}

/** Every point of the drawn body on a frame of the sample. */
function trueBody(frame: number): readonly Rect[] {
  const file = new URL('../../../sample-clips/truth/sample-butterfly-together.json', import.meta.url);
  const row = truthSchema.parse(JSON.parse(readFileSync(fileURLToPath(file), 'utf8'))).points[frame] ?? [];
  return Array.from({ length: row.length / 2 }, (_, i) => {
    return { x: row[2 * i] ?? 0, y: row[2 * i + 1] ?? 0, width: 0, height: 0 };
  });
}

const slack = 1e-6;
const holds = (outer: Rect, inner: Rect): boolean =>
  inner.x >= outer.x - slack &&
  inner.y >= outer.y - slack &&
  inner.x + inner.width <= outer.x + outer.width + slack &&
  inner.y + inner.height <= outer.y + outer.height + slack;
const whole = { x: 0, y: 0, width: swim.clip.width, height: swim.clip.height };

describe('a picture that Submark frames by itself', () => {
  it('is the whole picture on every page where head or feet are not known', () => {
    for (const lost of [['ear'], ['toe', 'ankle'], ['ear', 'wrist', 'fingertip', 'ankle', 'toe']] as const) {
      const pages = everyPage(exportSource(without(lost), nobody));
      expect(pages.length).toBeGreaterThan(10);
      for (const [name, { pictures }] of pages) {
        expect(pictures.length, name).toBeGreaterThan(0);
        for (const { crop } of pictures) expect(crop, `${name} without ${lost}`).toEqual(whole);
      }
    }
  });

  it('holds head, hands and feet with a margin on every page, all of it shown unstretched', () => {
    const source = exportSource(swim, nobody);
    for (const [name, { width, height, pictures }] of everyPage(source))
      for (const { crop, at, frame } of pictures) {
        expect(holds(whole, crop), name).toBe(true);
        expect(holds({ x: 0, y: 0, width, height }, at), name).toBe(true);
        expect(crop.width / crop.height, name).toBeCloseTo(at.width / at.height, 2);
        // a twentieth of the longest side round every point, as far as the picture goes
        const line = source.lines.get(frame);
        if (!line?.points.ear) {
          // between two lines: where the swimmer was in truth
          for (const point of trueBody(frame))
            if (holds(whole, point)) expect(holds(crop, point), `${name}, frame ${frame}`).toBe(true);
          continue;
        }
        const xs = Object.values(line.points).map(({ x }) => x);
        const ys = Object.values(line.points).map(({ y }) => y);
        const room = 0.05 * (Math.max(...xs) - Math.min(...xs));
        const [left, top] = [Math.max(0, Math.min(...xs) - room), Math.max(0, Math.min(...ys) - room)];
        const right = Math.min(whole.width, Math.max(...xs) + room);
        const bottom = Math.min(whole.height, Math.max(...ys) + room);
        expect(holds(crop, { x: left, y: top, width: right - left, height: bottom - top }), name).toBe(true);
      }
  });

  it('puts no film on a fan, and whole pictures into a video', () => {
    const source = exportSource(swim, nobody);
    const cycle = cycleFrames(source.context.events, source.clock, 60, 8);
    expect(cycle && composeFan(source, cycle, measure)?.pictures).toEqual([]);
    const { clock } = source;
    const stretch = { first: 0, last: clock.table.starts.length - 1 };
    const part = pairPartOf(swim, nobody, clock, stretch, { on: 'frame', frame: 0 });
    const plain = {
      swimId: swim.id,
      stretch,
      lock: { on: 'frame', frame: 0 },
      frame: 0,
      mirrored: false,
      title: '',
    };
    for (const [sides, sameLength] of [
      [1, false],
      [2, false],
      [2, true],
    ] as const) {
      const plan = videoPlanSchema.parse({
        sides: Array.from({ length: sides }, () => plain),
        ...{ mode: 'time', lead: 0, seconds: 1, slow: 4, rate: 30, width: 1920, sameLength, lay: null },
        show: { bodyLine: true, angles: false, score: true, flashes: true, facts: true },
        ...{ caption: '', sound: false, name: 'a video' },
      });
      const layout = videoLayout(
        Array.from({ length: sides }, () => part),
        plan,
      );
      expect(layout.pictures).toHaveLength(sides);
      layout.pictures.forEach((box, index) => {
        // even sizes round by a pixel
        expect(Math.abs(box.width / box.height - whole.width / whole.height)).toBeLessThan(0.02);
        expect(holds(layout.cells[index] ?? box, box)).toBe(true);
      });
    }
  });

  it('holds a body that lies anyhow, seen in part or whole, arms and legs anywhere they reach', () => {
    const picture = { width: 1920, height: 1080 };
    const angle = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });
    const bend = fc.double({ min: -1.2, max: 1.2, noNaN: true });
    // parts as shares of body height, head to toe, and an arm
    const lengths = { neck: 0.118, trunk: 0.288, thigh: 0.245, shank: 0.246, foot: 0.152, arm: 0.44 };
    const body = fc.record({
      shoulder: fc.record({
        x: fc.double({ min: 0, max: 1920, noNaN: true }),
        y: fc.double({ min: 0, max: 1080, noNaN: true }),
      }),
      tall: fc.double({ min: 80, max: 900, noNaN: true }),
      along: angle,
      bends: fc.tuple(bend, bend, bend, bend),
      arms: fc.tuple(angle, angle),
      lost: fc.subarray<LandmarkName>([
        'fingertip',
        'wrist',
        'elbow',
        'shoulder',
        'ear',
        'hip',
        'knee',
        'ankle',
        'toe',
      ]),
    });
    fc.assert(
      fc.property(
        body,
        fc.double({ min: 0.4, max: 3, noNaN: true }),
        ({ shoulder, tall, along, bends, arms, lost }, aspect) => {
          const step = (from: Point, way: number, share: number): Point => ({
            x: from.x + Math.cos(way) * share * tall,
            y: from.y + Math.sin(way) * share * tall,
          });
          const ear = step(shoulder, along + Math.PI + bends[0], lengths.neck);
          const crown = step(ear, along + Math.PI + bends[0], 0.1);
          const hip = step(shoulder, along, lengths.trunk);
          const knee = step(hip, along + bends[1], lengths.thigh);
          const ankle = step(knee, along + bends[1] + bends[2], lengths.shank);
          const toe = step(ankle, along + bends[1] + bends[2] + bends[3], lengths.foot);
          const reached = arms.map((way) => step(shoulder, way, lengths.arm));
          const arm = (share: number): Point => step(shoulder, arms[0], lengths.arm * share);
          const all = {
            fingertip: arm(1),
            wrist: arm(0.75),
            elbow: arm(0.42),
            shoulder,
            ear,
            hip,
            knee,
            ankle,
            toe,
          };
          const seen: Posture = {
            frame: 7,
            points: Object.fromEntries(
              Object.entries(all).filter(([name]) => !lost.includes(name as LandmarkName)),
            ),
            hidden: [],
          };
          // the swim knows from other frames how tall the swimmer is
          const room = swimmerRoom(seen.points, shownHeight({ points: all }) ?? 0);
          const slot = { x: 10, y: 20, width: 100 * aspect, height: 100 };
          const { crop, at } = pictureView(room, picture, slot);
          expect(holds({ x: 0, y: 0, ...picture }, crop)).toBe(true);
          expect(holds(slot, at)).toBe(true);
          expect(crop.width / crop.height).toBeCloseTo(at.width / at.height, 6);
          if (lost.includes('ear') || (lost.includes('ankle') && lost.includes('toe'))) {
            expect(room).toBeNull();
            expect(crop).toEqual({ x: 0, y: 0, ...picture });
            return;
          }
          for (const point of [...Object.values(all), ...reached, crown]) {
            const inside =
              point.x >= 0 && point.x <= picture.width && point.y >= 0 && point.y <= picture.height;
            if (inside) expect(holds(crop, { ...point, width: 0, height: 0 })).toBe(true);
          }
        },
      ),
      { numRuns: 400 },
    );
  });

  it('shows the whole picture while no frame tells how tall the swimmer is', () => {
    const seen: Posture = {
      frame: 0,
      points: { ear: { x: 900, y: 500 }, toe: { x: 960, y: 500 } },
      hidden: [],
    };
    const { clip } = swim;
    expect(swimmerWindows({ clip, postures: [seen], followed: [], seen: [] }).roomOn(0)).toBeNull();
  });
});

describe('points that were only seen', () => {
  /** The same swim as if its lines had been seen and nobody had laid one. */
  const seenOnly: Swim = {
    ...swim,
    postures: [],
    followed: [],
    seen: landmarkNames.map((landmark) => {
      const own = swim.postures.filter(({ points }) => points[landmark]);
      const first = own[0]?.frame ?? 0;
      const last = own.at(-1)?.frame ?? 0;
      return {
        landmark,
        frame: first,
        points: Array.from({ length: last - first + 1 }, (_, i): [number, number, number] => {
          const near = own.reduce((best, each) =>
            Math.abs(each.frame - first - i) < Math.abs(best.frame - first - i) ? each : best,
          );
          const { x, y } = near.points[landmark] ?? { x: 0, y: 0 };
          return [x, y, 4];
        }),
      };
    }),
  };
  const wordsOf = ({ over }: Composition): string =>
    over.flatMap((op) => (op.op === 'words' ? [op.words] : [])).join('\n');

  it('are called so on every page that shows them, and no angle is told of them', () => {
    for (const [page, composition] of everyPage(exportSource(seenOnly, nobody))) {
      expect([page, wordsOf(composition)]).toEqual([page, expect.stringMatching(/not reviewed/i)]);
      expect([page, wordsOf(composition)]).toEqual([page, expect.not.stringMatching(/\d°/)]);
    }
    for (const [page, composition] of everyPage(exportSource(swim, nobody)))
      expect([page, wordsOf(composition)]).toEqual([page, expect.not.stringMatching(/not reviewed/i)]);
  });

  it('are no line that anything is laid over or measured on', () => {
    const { lines } = exportSource(seenOnly, nobody);
    const line = [...lines.values()][0];
    expect(line?.seen.length).toBeGreaterThan(1);
    expect(line && hasPoint(withoutSeen(line))).toBe(false);
  });
});
