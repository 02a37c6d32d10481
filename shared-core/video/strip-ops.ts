import { type PlacedEvent, likeEvents } from '../compare/like-events';
import { type LockedMode, placeOfFrame, placeOfTime } from '../compare/pair-clock';
import type { PairPart } from '../compare/pair-part';
import type { DrawingOp } from '../drawing/drawing-op';
import { glyphOps, staffColour } from '../drawing/glyph-ops';
import { lanedGlyphHeight, layoutStaves, type Staves } from '../drawing/staves';
import { type Staff, staffOf } from '../marks/event-kind';
import type { Point } from '../units/point';
import type { Box } from './video-layout';
import type { VideoRun } from './video-run';
import { videoPageWords } from '../words/video-page';

/** The dim look, as on a dark screen: a video has no theme. */
const look = {
  ground: '#0d171c',
  staff: '#13222a',
  line: '#27404b',
  ink: '#e9f1f2',
  quiet: '#9fb4bb',
} as const;

const names: Readonly<Record<Staff, string>> = {
  hands: videoPageWords('hands'),
  feet: videoPageWords('feet'),
  head: videoPageWords('head'),
  course: videoPageWords('course'),
};

/** Farthest that two moments may be apart and still answer each other: seconds, or cycles. As on the pair's score. */
export const farthestLike = { time: 0.35, cycle: 0.4 } as const;

export interface Strip {
  /** Everything but the playheads. */
  readonly ops: readonly DrawingOp[];
  /** The playheads of the swims at their frames. */
  playheads(frames: readonly number[]): readonly DrawingOp[];
}

/** The score under a video's pictures, over the places the video shows. */
export function videoStrip(
  parts: readonly PairPart[],
  mode: LockedMode,
  run: VideoRun,
  box: Box,
  letters: number,
): Strip {
  const used = new Set(parts.flatMap(({ swim }) => swim.events.map(({ kind }) => staffOf(kind))));
  const small = letters * 0.78;
  const staves = layoutStaves(box.height, used, {
    lanes: parts.length,
    top: letters * 0.5,
    axis: letters * 1.7,
    between: letters * 0.35,
    least: letters * 0.8,
  });
  const gutter = letters * 4.6;
  const left = box.x + gutter + letters;
  const right = box.x + box.width - letters * 2.2;
  const from = Math.min(...parts.map(({ side }, i) => placeOfFrame(side, mode, run.spans[i]?.first ?? 0)));
  const to = Math.max(
    from + 1e-3,
    ...parts.map(({ side }, i) => placeOfFrame(side, mode, run.spans[i]?.last ?? 0)),
  );
  const toX = (place: number): number => left + ((place - from) / (to - from)) * (right - left);
  const seen = parts.map(({ context, side }, i): readonly PlacedEvent[] => {
    const span = run.spans[i];
    return context.events
      .filter(({ event }) => span && event.frame >= span.first && event.frame <= span.last)
      .map(({ event, time }) => ({ event, place: placeOfTime(side, mode, time) }));
  });
  const at = (which: number, each: PlacedEvent): Point | null => {
    const y = lanedGlyphHeight(staves, which, each.event.kind, letters * 0.5);
    return y === null ? null : { x: toX(each.place), y: box.y + y };
  };
  const ops: DrawingOp[] = [
    ...emptyStaves(staves, box, gutter, letters, parts.length),
    ...ticks(mode, from, to, toX, box.y + staves.axisTop, small),
  ];
  for (const [which, events] of seen.entries())
    ops.push(...waveOps(events, (each) => at(which, each), letters));
  const [a, b] = seen;
  if (a && b)
    for (const { first, second } of likeEvents(a, b, farthestLike[mode])) {
      const [p, q] = [at(0, first), at(1, second)];
      if (p && q) ops.push({ op: 'line', points: [p, q], colour: look.quiet, width: letters * 0.09 });
    }
  seen.forEach((events, which) => {
    for (const each of events) {
      const point = at(which, each);
      if (point) ops.push(...glyphOps(each.event.kind, point, letters / 17, look.ground));
    }
  });
  return {
    ops,
    playheads: (frames) =>
      parts.flatMap(({ side }, i): DrawingOp[] => {
        const x = toX(placeOfFrame(side, mode, frames[i] as number));
        const lanes = staves.staves.map(({ lanes: each }) => each[i]);
        return lanes.flatMap((lane): DrawingOp[] =>
          lane
            ? [
                {
                  op: 'line',
                  points: [
                    { x, y: box.y + lane.top },
                    { x, y: box.y + lane.top + lane.height },
                  ],
                  colour: look.ink,
                  width: letters * 0.14,
                  cap: 'butt',
                },
              ]
            : [],
        );
      }),
  };
}

const rectangle = (x: number, y: number, width: number, height: number): readonly Point[] => [
  { x, y },
  { x: x + width, y },
  { x: x + width, y: y + height },
  { x, y: y + height },
];

function emptyStaves(
  { staves }: Staves,
  box: Box,
  gutter: number,
  letters: number,
  swims: number,
): readonly DrawingOp[] {
  const words = (text: string, x: number, y: number, colour: string, size: number): DrawingOp => ({
    op: 'words',
    words: text,
    at: { x, y: y + size * 0.36 },
    size,
    weight: 600,
    colour,
    casing: null,
  });
  return [
    { op: 'area', points: rectangle(box.x, box.y, box.width, box.height), fill: look.ground },
    ...staves.flatMap(({ staff, lanes }): DrawingOp[] => {
      const top = box.y + (lanes[0]?.top ?? 0);
      const height = lanes.reduce((sum, lane) => sum + lane.height, 0);
      return [
        { op: 'area', points: rectangle(box.x + gutter, top, box.width - gutter, height), fill: look.staff },
        words(names[staff], box.x + letters * 0.8, top + height / 2, staffColour[staff], letters * 0.8),
        ...lanes.flatMap((lane, i): DrawingOp[] => {
          const y = box.y + lane.top;
          const letter = words(
            i === 0 ? 'A' : 'B',
            box.x + gutter - letters * 0.9,
            y + lane.height / 2,
            look.ink,
            letters * 0.72,
          );
          const between: DrawingOp = {
            op: 'line',
            points: [
              { x: box.x + gutter, y },
              { x: box.x + box.width, y },
            ],
            colour: look.line,
            width: 1,
          };
          return [...(swims > 1 ? [letter] : []), ...(i > 0 ? [between] : [])];
        }),
      ];
    }),
  ];
}

/** Steps between ticks that people count in, and the fewest there should be. */
const tickSteps = [0.05, 0.1, 0.25, 0.5, 1, 2, 5, 10, 20, 60, 120, 300];
const mostTicks = 9;

function ticks(
  mode: LockedMode,
  from: number,
  to: number,
  toX: (place: number) => number,
  y: number,
  size: number,
): readonly DrawingOp[] {
  const step = tickSteps.find((each) => (to - from) / each <= mostTicks) ?? 600;
  const count = Math.floor((to - from) / step + 1e-9) + 1;
  const firstTick = Math.ceil(from / step - 1e-9) * step;
  return Array.from({ length: count }, (_, i) => firstTick + i * step)
    .filter((place) => place <= to + 1e-9)
    .flatMap((place): DrawingOp[] => {
      const x = toX(place);
      const sign = place < -1e-9 ? '−' : place > 1e-9 ? '+' : '';
      const value = Math.abs(place);
      const words =
        mode === 'cycle'
          ? `${sign}${Math.round(100 * value)} %`
          : `${sign}${value.toFixed(step >= 1 ? 0 : step >= 0.1 ? 1 : 2)} s`;
      return [
        {
          op: 'line',
          points: [
            { x, y },
            { x, y: y + size * 0.4 },
          ],
          colour: look.quiet,
          width: 1.5,
        },
        {
          op: 'words',
          words,
          at: { x, y: y + size * 1.5 },
          size,
          weight: 400,
          colour: look.quiet,
          casing: null,
          align: 'centre',
        },
      ];
    });
}

/** A curve through tops and bottoms in turn, level at each: it joins marks, it is no measurement. */
function waveOps(
  events: readonly PlacedEvent[],
  at: (each: PlacedEvent) => Point | null,
  letters: number,
): readonly DrawingOp[] {
  const kicks = events
    .filter(({ event }) => event.kind === 'kick-top' || event.kind === 'kick-bottom')
    .sort((p, q) => p.place - q.place);
  return kicks.slice(1).flatMap((to, i): DrawingOp[] => {
    const before = kicks[i];
    const p = before && at(before);
    const q = at(to);
    if (!before || !p || !q || before.event.kind === to.event.kind) return [];
    const points = Array.from({ length: 17 }, (_, n) => ({
      x: p.x + ((q.x - p.x) * n) / 16,
      y: p.y + ((q.y - p.y) * (1 - Math.cos((Math.PI * n) / 16))) / 2,
    }));
    return [{ op: 'line', points, colour: staffColour.feet, width: letters * 0.08, opacity: 0.7 }];
  });
}
