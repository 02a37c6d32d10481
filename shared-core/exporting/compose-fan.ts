import type { Composition } from '../drawing/composition';
import { chainOf, chainPieces, fittedWords } from '../drawing/body-line-ops';
import type { DrawingOp, MeasureWords } from '../drawing/drawing-op';
import { movedPosture, type ShownLine, withoutSeen } from '../drawing/shown-line';
import { poolCarrier } from '../scene/pool-transform';
import { cardWords } from '../swim-file/card-words';
import { realTimeOf } from '../timeline/clip-clock';
import type { Point } from '../units/point';
import type { CycleFrames } from './cycle-frames';
import type { ExportSource } from './export-source';
import { inkWords, rule, sheetLook } from './sheet-look';
import { exportsWords } from '../words/exports';

/** Pixels; our defaults. */
const width = 2400;
const edge = 70;
const letters = 32;
const plotHeight = 1000;
/** Lightest line of the fan, at the start of the cycle; the darkest is the ink. Shares of white. */
const lightest = 0.74;

/**
 * The body lines of one cycle over each other, hips in one place along the pool and heights as filmed, turned level,
 * swimming to the right: light at the start of the cycle, dark at its end, each quarter named at its toe. Null when
 * fewer than two lines with a hip are laid in the cycle.
 */
export function composeFan(
  source: ExportSource,
  cycle: CycleFrames,
  measure: MeasureWords,
): Composition | null {
  const { swim, context } = source;
  const span = cycle.toSeconds - cycle.fromSeconds;
  const lines = fanLines(source, cycle);
  if (lines.length < 2) return null;

  const all = lines.flatMap(({ posture }) => chainOf(posture));
  const xs = all.map(({ x }) => x);
  const ys = all.map(({ y }) => y);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [high, low] = [Math.min(...ys), Math.max(...ys)];
  const room = width - 2 * edge;
  const top = edge + letters * 4.6;
  const side = letters * 4;
  const scale = Math.min((room - 2 * side) / (right - left), (plotHeight - letters * 4) / (low - high));
  const place = ({ x, y }: Point): Point => ({
    x: width / 2 + (x - (left + right) / 2) * scale,
    y: top + plotHeight / 2 + (y - (high + low) / 2) * scale,
  });
  const { title, facts } = cardWords(swim.card);
  const over: DrawingOp[] = [
    inkWords(
      fittedWords(title, room, letters * 1.5, 600, measure),
      { x: edge, y: edge + letters * 1.3 },
      letters * 1.5,
      600,
    ),
    inkWords(
      fittedWords(
        [
          ...facts,
          exportsWords('bodyLinesS', {
            lines: lines.length,
            of: cycle.of,
            number: cycle.number,
            count: cycle.count,
            span: span.toFixed(3),
          }),
          ...(swim.card.invented ? [exportsWords('inventedSwimDemonstration')] : []),
        ].join(' · '),
        room,
        letters * 0.95,
        400,
        measure,
      ),
      { x: edge, y: edge + letters * 2.9 },
      letters * 0.95,
      400,
      sheetLook.quiet,
    ),
    trail(lines.flatMap(({ posture }) => posture.points.toe ?? []).map(place)),
    trail(lines.flatMap(({ posture }) => posture.points.fingertip ?? []).map(place)),
  ];
  for (const { phase, posture } of lines) {
    const isFollowed = posture.followed.length > 0;
    const colour = grey(lightest * (1 - phase));
    for (const piece of chainPieces(posture, posture.followed))
      over.push({ op: 'line', points: piece.map(place), colour, width: isFollowed ? 3.5 : 7 });
  }
  const hip = lines.flatMap(({ posture }) => posture.points.hip ?? []).map(place);
  for (const at of hip) over.push({ op: 'disc', at, radius: 6, fill: sheetLook.ink });
  over.push(...quarterNames(lines, place));
  const foot = top + plotHeight + letters * 1.6;
  over.push(
    rule(edge, foot - letters * 1.6, room, 2),
    inkWords(
      exportsWords('hipsLaidOnePlace', {
        value: context.transform.travelKnown ? exportsWords('swimmingRight') : '',
        of: cycle.of,
        value2: lines.some(({ posture }) => posture.followed.length > 0)
          ? ` ${exportsWords('thinFollowedPoints')}`
          : '',
      }),
      { x: edge, y: foot },
      letters * 0.85,
      400,
      sheetLook.quiet,
    ),
    ...scaleBar(context.transform.unit, scale, { x: width - edge, y: top + plotHeight - letters * 0.9 }),
  );
  return { width, height: Math.round(foot + edge), ground: sheetLook.ground, pictures: [], over };
}

interface FanLine {
  /** Share of the cycle, 0 to 1. */
  readonly phase: number;
  readonly frame: number;
  /** The hip at 0 along the pool, heights as filmed; y down, as everything is drawn. */
  readonly posture: ShownLine;
}

/** The body lines of the cycle that have a hip, in their order. */
function fanLines({ clock, context, lines: all }: ExportSource, cycle: CycleFrames): readonly FanLine[] {
  const carry = poolCarrier(context.transform);
  const span = cycle.toSeconds - cycle.fromSeconds;
  // hips laid on one place are a measure: seen points are none
  return [...all.values()]
    .map(withoutSeen)
    .map((posture) => ({
      phase: (realTimeOf(clock, posture.frame) - cycle.fromSeconds) / span,
      frame: posture.frame,
      // y down, as everything is drawn
      posture: movedPosture(posture, (point) => {
        const pool = carry(point);
        return { x: pool.x, y: -pool.y };
      }),
    }))
    .filter(({ phase }) => phase >= -1e-9 && phase < 1)
    .flatMap(({ posture, ...rest }) => {
      const { hip } = posture.points;
      return hip ? [{ ...rest, posture: movedPosture(posture, ({ x, y }) => ({ x: x - hip.x, y })) }] : [];
    })
    .sort((a, b) => a.phase - b.phase);
}

/** A quarter's name at the toe of the line nearest to it, where one is near. */
function quarterNames(lines: readonly FanLine[], place: (point: Point) => Point): readonly DrawingOp[] {
  const over: DrawingOp[] = [];
  const named: Point[] = [];
  for (const quarter of [0, 0.25, 0.5, 0.75]) {
    const nearest = lines.reduce((best, each) =>
      Math.abs(each.phase - quarter) < Math.abs(best.phase - quarter) ? each : best,
    );
    const toe = nearest.posture.points.toe;
    if (!toe || Math.abs(nearest.phase - quarter) > 0.125) continue;
    const at = place(toe);
    const label = { x: at.x - letters * 0.7, y: at.y + letters * 0.35 };
    while (named.some(({ x, y }) => Math.abs(y - label.y) < letters && Math.abs(x - label.x) < 2.5 * letters))
      label.y += letters * 0.5;
    named.push(label);
    over.push(
      {
        op: 'disc',
        at,
        radius: 9,
        fill: sheetLook.ground,
        edge: { colour: sheetLook.ink, width: 6 },
      },
      inkWords(`${Math.round(nearest.phase * 100)} %`, label, letters * 0.9, 600, sheetLook.ink, 'right'),
    );
  }
  return over;
}

const trail = (points: readonly Point[]): DrawingOp => ({
  op: 'line',
  points,
  colour: sheetLook.quiet,
  width: 3,
  dash: [10, 10],
  cap: 'butt',
});

/** A grey of the ink: 0 is the ink, 1 white. */
function grey(white: number): string {
  const channel = (ink: number): string =>
    Math.round(ink + (255 - ink) * white)
      .toString(16)
      .padStart(2, '0');
  return `#${channel(11)}${channel(26)}${channel(32)}`;
}

/** A bar of half a metre, or a tenth of the body; none in pixels. */
function scaleBar(unit: 'm' | 'L' | 'px', scale: number, end: Point): readonly DrawingOp[] {
  if (unit === 'px') return [];
  const length = (unit === 'm' ? 0.5 : 0.1) * scale;
  return [
    {
      op: 'line',
      points: [
        { x: end.x - length, y: end.y - letters * 0.3 },
        { x: end.x, y: end.y - letters * 0.3 },
      ],
      colour: sheetLook.ink,
      width: 6,
      cap: 'butt',
    },
    inkWords(
      unit === 'm' ? '0.5 m' : exportsWords('n01BodyLength'),
      { x: end.x - length - letters * 0.5, y: end.y },
      letters * 0.85,
      600,
      sheetLook.ink,
      'right',
    ),
  ];
}
