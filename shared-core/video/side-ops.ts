import { type LaidLine, layBodyLine, mirrorLaid } from '../compare/lay-body-line';
import { mirrorPosture, mirrorScene } from '../compare/mirror-swim';
import type { PairPart } from '../compare/pair-part';
import { angleOps, bodyLineOps, casedWords, fittedWords, laidLineOps } from '../drawing/body-line-ops';
import type { DrawingOp, MeasureWords } from '../drawing/drawing-op';
import { glyphOps, staffColour } from '../drawing/glyph-ops';
import { placePoint } from '../drawing/composition';
import { casing } from '../drawing/landmark-look';
import { markShare } from '../drawing/mark-size';
import { movedPosture, withoutSeen } from '../drawing/shown-line';
import { guessedHeight } from '../drawing/swimmer-size';
import { staffOf } from '../marks/event-kind';
import { hasPoint } from '../swim-file/has-point';
import { exportsWords } from '../words/exports';
import { kickRhythmReadings } from '../measures/events/kick-rhythm';
import { timingReadings } from '../measures/events/timing';
import { swimDoubtWords } from '../measures/kick-doubt-words';
import { markPhrase } from '../marks/mark-words';
import type { EventMark, Posture } from '../swim-file/swim-schema';
import { realTimeOf } from '../timeline/clip-clock';
import { sideCrops } from './side-crops';
import type { Box, VideoLayout } from './video-layout';
import type { VideoPlan } from './video-plan';
import { keptWith } from '../units/kept-with';
import { videoPageWords } from '../words/video-page';

/** Our defaults, seconds of video: how long an event's name stays, and how long its frame is lit. */
const nameStays = 0.9;
const lightStays = 0.18;

/** What is drawn over one swim's picture, in layers that change at different times. */
export interface SideLayers {
  readonly line: readonly DrawingOp[];
  readonly where: readonly DrawingOp[];
  readonly flash: readonly DrawingOp[];
  /** The lit edge on an event's own frame: four lines, far apart, each a layer of its own. */
  readonly light: readonly DrawingOp[];
}

function lineOf(part: PairPart, frame: number): LaidLine | null {
  const line = part.lines.get(frame);
  // laid over by what is known, never by what was only seen
  const posture = line && withoutSeen(line);
  if (!posture || !hasPoint(posture)) return null;
  return {
    posture,
    scene: part.swim.scene,
    width: part.swim.clip.width,
    bodyLength: part.context.bodyLength?.pixels ?? null,
  };
}

/** The layers over one swim at the frames shown; the same body lines as on the stages. */
export function sideLayers(
  parts: readonly PairPart[],
  plan: VideoPlan,
  layout: VideoLayout,
  frames: readonly number[],
  which: number,
  measure: MeasureWords,
): SideLayers {
  const part = parts[which];
  const side = plan.sides[which];
  const picture = layout.pictures[which];
  const cell = layout.cells[which];
  if (!part || !side || !picture || !cell) return { line: [], where: [], flash: [], light: [] };
  const frame = frames[which] as number;
  const { clip, scene, card } = part.swim;
  const size = layout.letters;
  const view = { crop: sideCrops(parts, plan, layout, frames)[which] ?? picture, at: picture };
  const placed = (posture: Posture): Posture => movedPosture(posture, (point) => placePoint(view, point));
  const tall = guessedHeight(part.swim);
  const height = tall && (tall * picture.width) / view.crop.width;

  const line: DrawingOp[] = [];
  const own = part.lines.get(frame);
  const shown = own && side.mirrored ? mirrorPosture(own, clip.width) : own;
  const laid = which === 0 ? laidOver(parts, plan, frames) : null;
  if (laid) line.push(...laidLineOps(placed(laid), size, 'B'));
  if (plan.show.bodyLine && shown) {
    const at = placed(shown);
    line.push(...bodyLineOps(at, size * markShare(height, size), own?.followed, 'whole', own?.seen));
    if (plan.show.angles && !laid) {
      const seen = side.mirrored ? mirrorScene(scene, clip.width) : scene;
      const known = { ...shown, seen: own?.seen ?? [] };
      line.push(...angleOps(known, { scene: seen, card }, size * 0.9, measure, at, height));
    }
  }

  const edge = size * 0.9;
  const where: DrawingOp[] = [];
  if (plan.show.facts) {
    const count = part.side.clock.table.starts.length;
    const words = videoPageWords('frameS', {
      frame: frame + 1,
      count,
      realTimeOf: realTimeOf(part.side.clock, frame).toFixed(3),
    });
    const at = { x: cell.x + cell.width - edge, y: cell.y + cell.height - edge };
    where.push(casedWords(words, at, size * 0.9, 400, 'right'));
  }
  if (plan.show.bodyLine && (own?.seen.length ?? 0) > 0)
    where.push(
      casedWords(
        exportsWords('seenPoints'),
        { x: cell.x + cell.width - edge, y: cell.y + cell.height - edge - size * 1.3 },
        ...([size * 0.9, 400, 'right'] as const),
      ),
    );
  const flashed = plan.show.flashes ? flashOps(part, frame, plan.slow, cell, size) : { flash: [], light: [] };
  return { line, where, ...flashed };
}

function laidOver(parts: readonly PairPart[], plan: VideoPlan, frames: readonly number[]): Posture | null {
  const [a, b] = parts;
  if (!a || !b || plan.lay === null) return null;
  const onto = lineOf(a, frames[0] as number);
  const other = lineOf(b, frames[1] as number);
  if (!onto || !other) return null;
  return layBodyLine(other, plan.sides[0]?.mirrored ? mirrorLaid(onto) : onto, plan.lay)?.posture ?? null;
}

/** The event that has just begun: its sign and name, and at first a lit edge round the room of its swim. */
function flashOps(
  part: PairPart,
  frame: number,
  slow: number,
  cell: Box,
  size: number,
): Pick<SideLayers, 'flash' | 'light'> {
  const { clock } = part.side;
  const now = realTimeOf(clock, frame);
  const since = (event: EventMark): number => (now - realTimeOf(clock, event.frame)) * slow;
  const recent = part.swim.events.filter((event) => event.frame <= frame && since(event) < nameStays);
  const latest = Math.max(-1, ...recent.map((event) => event.frame));
  const named = recent.filter((event) => event.frame === latest);
  const first = named[0];
  const flash = named.flatMap((event, index) => {
    const y = cell.y + cell.height - size * (2.6 + 1.9 * index);
    const x = cell.x + size * 1.6;
    return [
      ...glyphOps(event.kind, { x, y: y - size * 0.4 }, size / 15, casing),
      casedWords(markPhrase(event), { x: x + size * 1.1, y }, size * 1.15, 600),
    ];
  });
  return { flash, light: first && since(first) < lightStays ? lightOps(first, cell, size) : [] };
}

function lightOps(event: EventMark, cell: Box, size: number): readonly DrawingOp[] {
  const inset = size * 0.16;
  const [left, right] = [cell.x + inset, cell.x + cell.width - inset];
  const [top, bottom] = [cell.y + inset, cell.y + cell.height - inset];
  const edges = [
    [left, top, right, top],
    [left, bottom, right, bottom],
    [left, top, left, bottom],
    [right, top, right, bottom],
  ] as const;
  return edges.map(
    ([x0, y0, x1, y1]): DrawingOp => ({
      op: 'line',
      points: [
        { x: x0, y: y0 },
        { x: x1, y: y1 },
      ],
      colour: staffColour[staffOf(event.kind)],
      width: inset * 2,
      cap: 'butt',
    }),
  );
}

/** What speaks against the times and gaps that a video shows of a swim; null where nothing does. */
const partDoubt = keptWith((part: PairPart): string | null => {
  const readings = [...kickRhythmReadings(part.context), ...timingReadings(part.context)];
  const words = swimDoubtWords(readings, part.swim.clip.slowdown.factor);
  return words === null ? null : videoPageWords('doubtful', { words });
});

/** What stays over the pictures all through: titles, speed, the coach's words, who is A and who is B. */
export function standingOps(
  parts: readonly PairPart[],
  plan: VideoPlan,
  layout: VideoLayout,
  speed: string,
  invented: boolean,
  measure: MeasureWords,
): readonly DrawingOp[] {
  const size = layout.letters;
  const edge = size * 0.9;
  const ops: DrawingOp[] = [];
  plan.sides.forEach(({ title, mirrored }, index) => {
    const cell = layout.cells[index];
    if (!cell || !plan.show.facts) return;
    const letter = plan.sides.length > 1 ? `${index === 0 ? 'A' : 'B'}  ` : '';
    const words = `${letter}${title}${mirrored ? ' · mirrored' : ''}`;
    ops.push(
      casedWords(
        fittedWords(words, cell.width - 2 * edge, size, 600, measure),
        { x: cell.x + edge, y: cell.y + edge + size * 0.8 },
        size,
        600,
      ),
    );
  });
  // speed and caption are always told: a film slowed without a word misleads
  const [cell] = layout.cells;
  const top = (cell?.y ?? 0) + edge + size * (plan.show.facts ? 2.2 : 0.8);
  ops.push(casedWords(speed, { x: edge, y: top }, size * 0.9, 600));
  let y = top + size * 1.25;
  if (invented) {
    ops.push(casedWords(videoPageWords('inventedSwimDemonstration'), { x: edge, y }, size * 0.8));
    y += size * 1.15;
  }
  // each over its own picture
  parts.forEach((part, index) => {
    const room = layout.cells[index];
    const doubt = partDoubt(part);
    if (!room || doubt === null) return;
    const words = fittedWords(doubt, room.width - 2 * edge, size * 0.8, 600, measure);
    ops.push(casedWords(words, { x: room.x + edge, y }, size * 0.8, 600));
  });
  const { caption } = layout;
  if (caption) {
    const words = fittedWords(plan.caption, caption.width - 2 * edge, size * 1.15, 600, measure);
    const y = caption.y + caption.height / 2 + size * 0.42;
    ops.push(casedWords(words, { x: caption.width / 2, y }, size * 1.15, 600, 'centre'));
  }
  return ops;
}
