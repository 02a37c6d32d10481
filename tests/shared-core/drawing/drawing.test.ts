import { createCanvas, Path2D } from '@napi-rs/canvas';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bodyLineOps, fittedWords } from '#core/drawing/body-line-ops';
import { glyphOps } from '#core/drawing/glyph-ops';
import { glyphShapes } from '#core/drawing/glyph-shape';
import { measureOn, paint } from '#core/drawing/paint';
import { pathPoints } from '#core/drawing/path-points';
import { eventKinds } from '#core/marks/event-kind';

const black = '#000000';

describe('a glyph as points', () => {
  it('covers what its path covers, drawn by another hand', () => {
    for (const kind of eventKinds) {
      const size = 200;
      const ours = createCanvas(size, size).getContext('2d');
      ours.translate(100, 100);
      ours.scale(10, 10);
      ours.lineWidth = 1;
      for (const points of pathPoints(glyphShapes[kind].path)) {
        ours.beginPath();
        for (const { x, y } of points) ours.lineTo(x, y);
        ours.stroke();
      }
      const theirs = createCanvas(size, size).getContext('2d');
      theirs.translate(100, 100);
      theirs.scale(10, 10);
      theirs.lineWidth = 1;
      theirs.stroke(new Path2D(glyphShapes[kind].path));
      const a = ours.getImageData(0, 0, size, size).data;
      const b = theirs.getImageData(0, 0, size, size).data;
      let apart = 0;
      let inked = 0;
      for (let i = 3; i < a.length; i += 4) {
        if ((b[i] ?? 0) > 127) inked += 1;
        if (a[i] !== b[i] && Math.abs((a[i] ?? 0) - (b[i] ?? 0)) > 127) apart += 1;
      }
      expect(inked).toBeGreaterThan(500);
      // joins at a closed path's start and arcs in straight pieces differ by single pixels
      expect(apart / inked, kind).toBeLessThan(0.03);
    }
  });

  it('refuses a path it can not read', () => {
    expect(() => pathPoints('M0,0 Q1,1 2,2')).toThrow(/Q/);
  });
});

describe('painting', () => {
  it('leaves a line where it is said to be, and the paper as it was', () => {
    const context = createCanvas(100, 40).getContext('2d');
    context.globalAlpha = 0.5;
    paint(context, [
      {
        op: 'line',
        points: [
          { x: 10, y: 20 },
          { x: 90, y: 20 },
        ],
        colour: '#ff0000',
        width: 6,
      },
    ]);
    expect(context.globalAlpha).toBe(0.5);
    const at = (x: number, y: number) => [...context.getImageData(x, y, 1, 1).data];
    expect(at(50, 20)).toEqual([255, 0, 0, 255]);
    expect(at(50, 5)).toEqual([0, 0, 0, 0]);
  });

  it('draws nothing outside the box of what is drawn', () => {
    const point = fc.record({ x: fc.integer({ min: 40, max: 160 }), y: fc.integer({ min: 40, max: 160 }) });
    fc.assert(
      fc.property(point, point, (hip, toe) => {
        const context = createCanvas(200, 200).getContext('2d');
        paint(context, bodyLineOps({ frame: 0, points: { hip, toe }, hidden: [] }, 20));
        const { data } = context.getImageData(0, 0, 200, 200);
        const [left, right] = [Math.min(hip.x, toe.x) - 14, Math.max(hip.x, toe.x) + 14];
        for (let y = 0; y < 200; y += 5)
          for (let x = 0; x < 200; x += 5)
            if (x < left || x > right) expect(data[(y * 200 + x) * 4 + 3]).toBe(0);
        expect(data[(hip.y * 200 + hip.x) * 4 + 3]).toBe(255);
      }),
      { numRuns: 20 },
    );
  });

  it('ends a followed line where a landmark is not sure, and draws a marked one past a landmark that is left out', () => {
    const posture = {
      frame: 0,
      points: { fingertip: { x: 20, y: 20 }, shoulder: { x: 100, y: 20 }, hip: { x: 180, y: 20 } },
      hidden: [],
    };
    const inked = (followed: readonly ('fingertip' | 'hip')[], x: number): boolean => {
      const context = createCanvas(200, 40).getContext('2d');
      paint(context, bodyLineOps(posture, 10, followed));
      return (context.getImageData(x, 20, 1, 1).data[3] ?? 0) > 0;
    };
    expect(inked([], 60)).toBe(true);
    expect(inked(['hip'], 60)).toBe(false);
    expect(inked(['hip'], 140)).toBe(true);
    expect(inked(['fingertip'], 20)).toBe(true);
  });

  it('breaks the line past a landmark that is left out while it is laid, and nowhere else', () => {
    const posture = {
      frame: 0,
      // elbow and wrist hidden; shoulder and hip are neighbours
      points: { fingertip: { x: 20, y: 20 }, shoulder: { x: 100, y: 20 }, hip: { x: 180, y: 20 } },
      hidden: ['wrist' as const, 'elbow' as const],
    };
    const context = createCanvas(200, 40).getContext('2d');
    paint(context, bodyLineOps(posture, 10, [], 'broken'));
    const whiteFrom = (from: number): number =>
      Array.from({ length: 50 }, (_, x) => context.getImageData(from + x, 20, 1, 1).data[0] ?? 0).filter(
        (red) => red > 120,
      ).length;
    expect(whiteFrom(115)).toBe(50);
    expect(whiteFrom(35)).toBeGreaterThan(5);
    expect(whiteFrom(35)).toBeLessThan(35);
  });

  it('draws a filled sign in its colour on its edge', () => {
    const context = createCanvas(40, 40).getContext('2d');
    paint(context, glyphOps('shoulder', { x: 20, y: 20 }, 2, black));
    expect([...context.getImageData(20, 20, 1, 1).data].slice(0, 3)).toEqual([230, 159, 0]);
  });
});

describe('words in a width', () => {
  it('are whole where they fit, and cut with an ellipsis that fits where not', () => {
    const measure = measureOn(createCanvas(10, 10).getContext('2d'));
    const words = 'Pip · butterfly, steady · 14 May 2026';
    expect(fittedWords(words, 2000, 20, 400, measure)).toBe(words);
    const cut = fittedWords(words, 150, 20, 400, measure);
    expect(cut.endsWith('…')).toBe(true);
    expect(measure(cut, 20, 400)).toBeLessThanOrEqual(150);
  });
});
