import { fittedWords } from '../drawing/body-line-ops';
import { rectangle, type Rect } from '../drawing/composition';
import type { DrawingOp, MeasureWords } from '../drawing/drawing-op';
import { wrappedWords } from '../drawing/wrapped-words';
import { inkWords, rule, sheetLook } from '../exporting/sheet-look';
import type { Point } from '../units/point';
import type { HandoutReading, Standing } from './handout-reading';

/** Points. */
export const readingCardHeight = 148;

/** One reading of a handout: its name, how it stands in a word and a shape, value and target, a bar, what it means. */
export function readingCard(
  reading: HandoutReading,
  { x, y, width }: Rect,
  measure: MeasureWords,
): readonly DrawingOp[] {
  const line = (
    words: string,
    down: number,
    size: number,
    weight: 400 | 600,
    colour: string = sheetLook.ink,
    left = 0,
  ): DrawingOp =>
    inkWords(
      fittedWords(words, width - left, size, weight, measure),
      { x: x + left, y: y + down },
      size,
      weight,
      colour,
    );
  const missing = reading.standing === 'missing';
  const reason = missing ? wrappedWords(reading.value, width, 10, 400, measure, 2) : [];
  const means = wrappedWords(reading.means, width, 9, 400, measure, 3);
  return [
    rule(x, y, width, 1),
    line(reading.label, 17, 11, 600, sheetLook.quiet),
    ...standingSign(reading.standing, { x: x + 9, y: y + 38 }),
    line(reading.word, 44.5, 19, 600, sheetLook.ink, 25),
    ...(missing
      ? reason.map((words, index) => line(words, 63 + index * 13, 10, 400, sheetLook.quiet))
      : [line(reading.value, 65, 13, 600), line(reading.target, 79, 10, 400, sheetLook.quiet)]),
    ...bar(reading, { x, y: y + 93, width, height: 8 }),
    ...means.map((words, index) => line(words, 119 + index * 12, 9, 400, sheetLook.quiet)),
  ];
}

/** A full disc with a tick; a disc half full; an empty ring; a short bar when there is nothing to stand against. */
function standingSign(standing: Standing, at: Point): readonly DrawingOp[] {
  const radius = 8;
  const ring: DrawingOp = {
    op: 'disc',
    at,
    radius,
    fill: '#ffffff',
    edge: { colour: sheetLook.ink, width: 2.5 },
  };
  switch (standing) {
    case 'met':
      return [
        { op: 'disc', at, radius: radius + 1.2, fill: sheetLook.ink },
        {
          op: 'line',
          points: [
            { x: at.x - 4, y: at.y + 0.3 },
            { x: at.x - 1, y: at.y + 3.4 },
            { x: at.x + 4.4, y: at.y - 3.2 },
          ],
          colour: '#ffffff',
          width: 2.2,
        },
      ];
    case 'close': {
      const half = Array.from({ length: 25 }, (_, i) => {
        const angle = Math.PI / 2 + (Math.PI * i) / 24;
        return { x: at.x + radius * Math.cos(angle), y: at.y + radius * Math.sin(angle) };
      });
      return [ring, { op: 'area', points: half, fill: sheetLook.ink }];
    }
    case 'not-yet':
      return [ring];
    case 'no-target':
    case 'missing':
      return [
        {
          op: 'line',
          points: [
            { x: at.x - 7, y: at.y },
            { x: at.x + 7, y: at.y },
          ],
          colour: sheetLook.quiet,
          width: 3,
        },
      ];
  }
}

/** The target as a broad grey band, the value as a dark diamond on its interval. */
function bar({ bar: found }: HandoutReading, { x, y, width, height }: Rect): readonly DrawingOp[] {
  if (!found) return [];
  const ends = [found.low, found.high, found.bandLow, found.bandHigh].filter((each) => each !== null);
  const least = Math.min(...ends);
  const most = Math.max(...ends);
  const room = (most - least || 1) * 0.18;
  // an end that is open reaches to the end of the bar
  const from = least - room;
  const to = most + room;
  const toX = (value: number): number => x + (width * (value - from)) / (to - from);
  const bandFrom = found.bandLow === null ? x : toX(found.bandLow);
  const bandTo = found.bandHigh === null ? x + width : toX(found.bandHigh);
  const middle = y + height / 2;
  const at = toX(found.value);
  const size = height * 0.72;
  return [
    {
      op: 'line',
      points: [
        { x, y: middle },
        { x: x + width, y: middle },
      ],
      colour: sheetLook.rule,
      width: 1,
      cap: 'butt',
    },
    {
      op: 'area',
      points: rectangle({ x: bandFrom, y, width: bandTo - bandFrom, height }),
      fill: '#b9c8cf',
    },
    // a faint printer may lose the grey: an end that is the target's own has an edge as well
    ...[found.bandLow === null ? [] : [bandFrom], found.bandHigh === null ? [] : [bandTo]].flat().map(
      (at): DrawingOp => ({
        op: 'line',
        points: [
          { x: at, y: y - 1.5 },
          { x: at, y: y + height + 1.5 },
        ],
        colour: sheetLook.quiet,
        width: 1.5,
        cap: 'butt',
      }),
    ),
    {
      op: 'line',
      points: [
        { x: toX(found.low), y: middle },
        { x: toX(found.high), y: middle },
      ],
      colour: sheetLook.ink,
      width: 2,
      cap: 'butt',
    },
    {
      op: 'area',
      points: [
        { x: at, y: middle - size },
        { x: at + size, y: middle },
        { x: at, y: middle + size },
        { x: at - size, y: middle },
      ],
      fill: sheetLook.ink,
      edge: { colour: '#ffffff', width: 2 },
    },
  ];
}
