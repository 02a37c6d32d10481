import { angleOps, bodyLineOps, fittedWords } from '../drawing/body-line-ops';
import {
  type Composition,
  placePoint,
  type PlacedPicture,
  rectangle,
  type Rect,
} from '../drawing/composition';
import { pictureView } from '../drawing/picture-view';
import { swimmerWindows } from '../drawing/swimmer-windows';
import { markShare } from '../drawing/mark-size';
import { guessedHeight } from '../drawing/swimmer-size';
import type { DrawingOp, MeasureWords } from '../drawing/drawing-op';
import { movedPosture } from '../drawing/shown-line';
import { wrappedWords } from '../drawing/wrapped-words';
import type { ExportSource } from '../exporting/export-source';
import { inkWords, rule, sheetLook } from '../exporting/sheet-look';
import { markPhrase } from '../marks/mark-words';
import { dayWords, swumWords } from '../swim-file/card-words';
import { realTimeOf } from '../timeline/clip-clock';
import type { Handout, Paper } from './handout-file';
import { handoutReading } from './handout-reading';
import { readingCard, readingCardHeight } from './reading-card';
import { handoutPageWords } from '../words/handout-page';

/** Points of 1/72 inch. A4 is 210 × 297 mm (ISO 216); Letter 8.5 × 11 inches. */
const paperSizes: Readonly<Record<Paper, { readonly width: number; readonly height: number }>> = {
  a4: { width: 595.28, height: 841.89 },
  letter: { width: 612, height: 792 },
};

/** Our defaults, in points: nothing on a fridge door is read under nine. */
const edge = 42;
const gap = 12;
const captionHeight = 24;
const smallestCue = 22;
const cueSizes = [30, 27, 24, smallestCue];

const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/**
 * The page a swimmer takes home: name and day, the cue, up to three pictures of the whole swimmer with body line and
 * angles, up to three readings against target. Ink on white; every standing has a word and a shape, so that it prints in
 * grey.
 */
export function composeHandout(handout: Handout, source: ExportSource, measure: MeasureWords): Composition {
  const { swim } = source;
  const { width, height } = paperSizes[handout.paper];
  const room = width - 2 * edge;
  const over: DrawingOp[] = [];
  let y = edge;

  // who, when, what
  const day = dayWords(swim.card.date);
  const { what, how } = swumWords(swim.card);
  const nameWidth = room - measure(day, 12, 400) - 2 * gap;
  over.push(
    inkWords(
      fittedWords(swim.card.swimmerName || 'Swimmer', nameWidth, 30, 600, measure),
      { x: edge, y: y + 26 },
      30,
      600,
    ),
    inkWords(day, { x: width - edge, y: y + 26 }, 12, 400, sheetLook.quiet, 'right'),
    inkWords(
      fittedWords(sentence([what, ...how].join(', ')), room, 13, 400, measure),
      { x: edge, y: y + 49 },
      13,
      400,
      sheetLook.quiet,
    ),
  );
  y += 64;

  const cue = cueOps(handout.cue, y, room, measure);
  over.push(...cue.ops);
  y = cue.bottom + gap;

  // from the foot up, the pictures take what is left
  const foot = height - edge;
  const anyFollowed = handout.frames.some((frame) => (source.lines.get(frame)?.followed.length ?? 0) > 0);
  const anySeen = handout.frames.some((frame) => (source.lines.get(frame)?.seen.length ?? 0) > 0);
  const footWords = [
    handoutPageWords('n95IntervalTrue'),
    ...(anyFollowed ? [handoutPageWords('hollowPointsComputer')] : []),
    ...(anySeen ? [handoutPageWords('seenPoints')] : []),
    ...(swim.card.invented
      ? [handoutPageWords(anyFollowed || anySeen ? 'inventedSwim' : 'inventedSwimDemonstration')]
      : []),
  ].join(' ');
  over.push(
    inkWords(fittedWords(footWords, room, 9, 400, measure), { x: edge, y: foot }, 9, 400, sheetLook.quiet),
  );
  const shown = handout.readings.flatMap((id) => {
    const definition = source.definitions.find((each) => each.id === id);
    const reading = source.readings.find((each) => each.id === id);
    return definition ? [handoutReading(definition, reading, source.swimmer)] : [];
  });
  const cardsTop = foot - 22 - (shown.length > 0 ? readingCardHeight : 0);
  const cardGap = 20;
  const cardWidth = (room - cardGap * (Math.max(1, shown.length) - 1)) / Math.max(1, shown.length);
  shown.forEach((reading, index) => {
    over.push(
      ...readingCard(
        reading,
        { x: edge + index * (cardWidth + cardGap), y: cardsTop, width: cardWidth, height: readingCardHeight },
        measure,
      ),
    );
  });

  const pictures =
    handout.frames.length === 0
      ? []
      : pictureRects(handout.frames.length, {
          x: edge,
          y,
          width: room,
          height: cardsTop - gap - y,
        });
  const { roomOn } = swimmerWindows(swim);
  const placed = pictures.map((at, index): PlacedPicture => {
    const frame = Math.min(handout.frames[index] as number, source.clock.table.starts.length - 1);
    const one: PlacedPicture = { swim: 0, frame, ...pictureView(roomOn(frame), swim.clip, at) };
    over.push(...pictureOps(one, source, measure));
    return one;
  });
  return { width, height, ground: sheetLook.ground, pictures: placed, over };
}

function cueOps(
  cue: string,
  top: number,
  room: number,
  measure: MeasureWords,
): { readonly ops: readonly DrawingOp[]; readonly bottom: number } {
  if (cue.trim() === '') return { ops: [rule(edge, top, room, 1)], bottom: top };
  const inside = room - 2 * 18;
  const linesAt = (each: number): number => wrappedWords(cue, inside, each, 600, measure, 9).length;
  const size =
    cueSizes.find((each) => linesAt(each) === 1) ??
    cueSizes.find((each) => linesAt(each) === 2) ??
    smallestCue;
  const lines = wrappedWords(cue, inside, size, 600, measure, 3);
  const height = 34 + lines.length * size * 1.2 + 8;
  return {
    ops: [
      {
        op: 'area',
        points: rectangle({ x: edge, y: top, width: room, height }),
        fill: '#eaf1f4',
      },
      {
        op: 'area',
        points: rectangle({ x: edge, y: top, width: 5, height }),
        fill: sheetLook.ink,
      },
      inkWords(handoutPageWords('think'), { x: edge + 18, y: top + 22 }, 11, 600, sheetLook.quiet),
      ...lines.map((line, index) =>
        inkWords(line, { x: edge + 18, y: top + 28 + size * (0.9 + 1.2 * index) }, size, 600),
      ),
    ],
    bottom: top + height,
  };
}

/** One large picture; two one over the other; of three the first large and two beside each other below. */
function pictureRects(count: number, { x, y, width, height }: Rect): readonly Rect[] {
  const high = (share: number): number => height * share - captionHeight;
  if (count === 1) return [{ x, y, width, height: high(1) }];
  const upper = count === 2 ? 0.5 : 0.56;
  const below = y + height * upper;
  const first = { x, y, width, height: high(upper) };
  if (count === 2) return [first, { x, y: below, width, height: high(0.5) }];
  const half = (width - gap) / 2;
  return [
    first,
    { x, y: below, width: half, height: high(1 - upper) },
    { x: x + half + gap, y: below, width: half, height: high(1 - upper) },
  ];
}

function pictureOps(
  placed: PlacedPicture,
  { swim, clock, lines }: ExportSource,
  measure: MeasureWords,
): readonly DrawingOp[] {
  const { at, frame } = placed;
  const tall = guessedHeight(swim);
  const height = tall && (tall * at.width) / placed.crop.width;
  const posture = lines.get(frame);
  const drawn = posture && movedPosture(posture, (point) => placePoint(placed, point));
  const events = swim.events.filter((mark) => mark.frame === frame).map(markPhrase);
  const seconds = `${realTimeOf(clock, frame).toFixed(2)} s`;
  const title = events.length > 0 ? sentence(events.join(', ')) : handoutPageWords('at', { seconds });
  const y = at.y + at.height + 14;
  const titleWidth = measure(title, 11, 600);
  return [
    ...(posture && drawn
      ? [
          ...bodyLineOps(drawn, 9 * markShare(height, 9), drawn.followed, 'whole', drawn.seen),
          ...angleOps(posture, swim, 9, measure, drawn, height).map((op) => heldInside(op, at, measure)),
        ]
      : []),
    inkWords(fittedWords(title, at.width, 11, 600, measure), { x: at.x, y }, 11, 600),
    ...(events.length > 0 && titleWidth + measure(seconds, 10, 400) + 8 <= at.width
      ? [inkWords(seconds, { x: at.x + titleWidth + 8, y }, 10, 400, sheetLook.quiet)]
      : []),
  ];
}

/** Words over a picture that would hang out of it, moved just inside. */
function heldInside(op: DrawingOp, at: Rect, measure: MeasureWords): DrawingOp {
  if (op.op !== 'words') return op;
  const half = measure(op.words, op.size, op.weight) / 2 + 4;
  const x = Math.max(at.x + half, Math.min(at.x + at.width - half, op.at.x));
  const y = Math.max(at.y + op.size + 3, Math.min(at.y + at.height - 5, op.at.y));
  return { ...op, at: { x, y } };
}
