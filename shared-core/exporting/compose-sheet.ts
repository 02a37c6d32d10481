import { type Composition, placePoint, type PlacedPicture, type Rect } from '../drawing/composition';
import { bodyLineOps, fittedWords } from '../drawing/body-line-ops';
import { pictureView } from '../drawing/picture-view';
import { markShare } from '../drawing/mark-size';
import { guessedHeight } from '../drawing/swimmer-size';
import { swimmerWindows } from '../drawing/swimmer-windows';
import type { DrawingOp, MeasureWords } from '../drawing/drawing-op';
import { movedPosture } from '../drawing/shown-line';
import { formatReading, readingLine } from '../measures/format-reading';
import { markPhrase } from '../marks/mark-words';
import { cardWords } from '../swim-file/card-words';
import { realTimeOf } from '../timeline/clip-clock';
import type { CycleFrames } from './cycle-frames';
import type { ExportSource, NamedReading } from './export-source';
import { inkWords, rule, sheetLook } from './sheet-look';
import { exportsWords } from '../words/exports';

/** Pixels; our defaults: legible on a screen and on A4 across. */
const width = 2400;
const edge = 60;
const gap = 24;
const columns = 4;
const aspect = 1.6;
const letters = 30;

/**
 * A contact sheet of one cycle: its frames in rows of four, all cropped alike to the whole swimmer, with the body line
 * where there is one; the cycle's share, frame and second under each; the readings below.
 */
export function composeSheet(
  source: ExportSource,
  cycle: CycleFrames,
  chosen: readonly NamedReading[],
  measure: MeasureWords,
): Composition {
  const { swim, clock, lines } = source;
  const { title, facts } = cardWords(swim.card);
  const room = width - 2 * edge;
  const cellWidth = (room - gap * (columns - 1)) / columns;
  const cellHeight = cellWidth / aspect;
  const caption = letters * 3.1;
  const top = edge + letters * 4.4;
  const rooms = alikeRooms(source, cycle);
  const tall = guessedHeight(swim);
  const some = (which: 'followed' | 'seen'): boolean => anyOn(source, cycle, which);
  const over: DrawingOp[] = [
    inkWords(
      fittedWords(title, room, letters * 1.6, 600, measure),
      { x: edge, y: edge + letters * 1.4 },
      letters * 1.6,
      600,
    ),
    inkWords(
      fittedWords(
        [
          ...facts,
          exportsWords('s', { ...cycle, toSeconds: (cycle.toSeconds - cycle.fromSeconds).toFixed(3) }),
          ...(some('followed') ? [exportsWords('hollowPointsFollowed')] : []),
          ...(some('seen') ? [exportsWords('seenPoints').toLowerCase()] : []),
          ...(swim.card.invented ? [exportsWords('inventedSwimDemonstration')] : []),
        ].join(' · '),
        room,
        letters,
        400,
        measure,
      ),
      { x: edge, y: edge + letters * 3 },
      letters,
      400,
      sheetLook.quiet,
    ),
  ];
  const pictures = cycle.phases.map(({ phase, frame }, index): PlacedPicture => {
    const at: Rect = {
      x: edge + (index % columns) * (cellWidth + gap),
      y: top + Math.floor(index / columns) * (cellHeight + caption),
      width: cellWidth,
      height: cellHeight,
    };
    const placed: PlacedPicture = {
      swim: 0,
      frame,
      ...pictureView(rooms[index] ?? null, swim.clip, at),
    };
    const posture = lines.get(frame);
    if (posture)
      over.push(
        ...bodyLineOps(
          movedPosture(posture, (point) => placePoint(placed, point)),
          letters * 0.7 * markShare(tall && (tall * placed.at.width) / placed.crop.width, letters * 0.7),
          posture.followed,
          'whole',
          posture.seen,
        ),
      );
    const events = swim.events.filter((mark) => mark.frame === frame).map(markPhrase);
    const share = `${Math.round(phase * 100)} %`;
    const where = exportsWords(posture ? 'frameS' : 'frameSNoBody', {
      frame: frame + 1,
      realTimeOf: realTimeOf(clock, frame).toFixed(3),
    });
    const y = at.y + at.height + letters * 1.15;
    const shareWidth = measure(share, letters, 600) + letters * 0.6;
    const line = (words: string, x: number, down: number): DrawingOp =>
      inkWords(
        fittedWords(words, at.x + cellWidth - x, letters * 0.8, 400, measure),
        { x, y: y + down },
        letters * 0.8,
        400,
        sheetLook.quiet,
      );
    over.push(
      inkWords(share, { x: at.x, y }, letters, 600),
      line(where, at.x + shareWidth, 0),
      line(events.join(', '), at.x, letters * 1.1),
    );
    return placed;
  });
  const rows = Math.ceil(cycle.phases.length / columns);
  const foot = top + rows * (cellHeight + caption);
  const below = readingRows(chosen, foot, room, measure);
  return {
    width,
    height: Math.round(below.bottom + edge),
    ground: sheetLook.ground,
    pictures,
    over: [...over, ...below.ops],
  };
}

/** Whether a line of the cycle has points of that kind. */
const anyOn = ({ lines }: ExportSource, { phases }: CycleFrames, which: 'followed' | 'seen'): boolean =>
  phases.some(({ frame }) => (lines.get(frame)?.[which].length ?? 0) > 0);

/**
 * The room of every frame, all of one size so that bodies compare; null, the whole picture, for all as soon as head or
 * feet aren't known on one of them.
 */
function alikeRooms({ swim }: ExportSource, cycle: CycleFrames): readonly (Rect | null)[] {
  const { roomOn } = swimmerWindows(swim);
  const rooms = cycle.phases.map(({ frame }) => roomOn(frame));
  const known = rooms.filter((room) => room !== null);
  if (known.length < rooms.length) return rooms.map(() => null);
  const width = Math.max(...known.map((room) => room.width));
  const height = Math.max(...known.map((room) => room.height));
  return known.map((room) => ({
    x: room.x + room.width / 2 - width / 2,
    y: room.y + room.height / 2 - height / 2,
    width,
    height,
  }));
}

function readingRows(
  chosen: readonly NamedReading[],
  top: number,
  room: number,
  measure: MeasureWords,
): { readonly ops: readonly DrawingOp[]; readonly bottom: number } {
  if (chosen.length === 0) return { ops: [], bottom: top };
  const across = Math.min(3, chosen.length);
  const cell = room / across;
  const line = letters * 2.9;
  const ops = chosen.flatMap(({ definition, reading }, index): DrawingOp[] => {
    const x = edge + (index % across) * cell;
    const y = top + letters * 1.6 + Math.floor(index / across) * line;
    return [
      inkWords(
        fittedWords(definition.label, cell - gap, letters * 0.85, 400, measure),
        { x, y },
        letters * 0.85,
        400,
        sheetLook.quiet,
      ),
      inkWords(
        fittedWords(
          readingLine(formatReading(reading, definition.digits)),
          cell - gap,
          letters * 1.15,
          600,
          measure,
        ),
        { x, y: y + letters * 1.4 },
        letters * 1.15,
        600,
      ),
    ];
  });
  return {
    ops: [rule(edge, top, room, 2), ...ops],
    bottom: top + letters * 0.6 + Math.ceil(chosen.length / across) * line,
  };
}
