import { expectedErrorShare } from '../follow/expected-error';
import { followedBodies } from '../follow/followed-posture';
import { seenBodies } from '../follow/seen-points';
import { landmarkNames, type LandmarkName } from '../marks/landmark';
import type { Swim } from '../swim-file/swim-schema';
import { type ClipClock, realTimeOf } from '../timeline/clip-clock';
import { tableFromRecord } from '../timeline/frame-times-record';
import type { Point } from '../units/point';
import { keptWith } from '../units/kept-with';
import type { Rect } from './composition';
import { type SwimmerPoints, stretchedHeights, swimmerHeight } from './swimmer-size';
import { swimmerRoom } from './swimmer-room';

/** Where to look to keep the swimmer in view, picture pixels; it may reach out of the picture. */
export interface SwimmerWindows {
  /** For a single picture. Null where the body isn't known: then only the whole picture is sure. */
  roomOn(frame: number): Rect | null;
  /**
   * For pictures that run: the same, widened evenly to the whole picture before and after frames without a known body, so that
   * it never jumps. Null where there are none with one.
   */
  windowOn(frame: number): Rect | null;
}

/** Our defaults, real seconds. Half the time over which place and size are smoothed: about one cycle in all. */
const smoothSeconds = 0.6;
/** Over how long the window grows to the whole picture where the body is lost. */
const widenSeconds = 0.5;
/** Between bodies no farther apart than this it is where they lead, with more room. */
const bridgeSeconds = 0.7;
/**
 * How fast, and at most how far, a foot is off the straight way from one known body to the next, in body heights: a deep, fast
 * kick. From memory, and used only to leave room.
 */
const strayRate = 2.1;
const strayMost = 0.35;
/** How much of that the parts of a body do; arms have their room in any case. From memory, as above. */
const strayOf: Readonly<Partial<Record<LandmarkName, number>>> = {
  ...{ toe: 1, ankle: 0.9, knee: 0.5, hip: 0.3, shoulder: 0.2, ear: 0.2 },
};
/** Standard deviations of one axis left round a followed or seen point. */
const spreads = 3;
/** Seen arms are often wrong, and room for both arms is left in any case. */
const seenArms: ReadonlySet<LandmarkName> = new Set(['fingertip', 'wrist', 'elbow']);

const timesOf = keptWith((clip: Swim['clip']): readonly number[] => {
  const clock: ClipClock = { table: tableFromRecord(clip.frameTimes), slowdown: clip.slowdown.factor };
  return clock.table.starts.map((_, frame) => realTimeOf(clock, frame));
});

const windowsOf = keptWith((postures: Swim['postures']) =>
  keptWith((followed: Swim['followed']) =>
    keptWith((seen: Swim['seen']) =>
      keptWith((clip: Swim['clip']) => makeWindows({ postures, followed, seen }, clip, timesOf(clip))),
    ),
  ),
);

/**
 * A window for every frame that surely holds the whole swimmer, head, hands and feet, with a margin, and that follows
 * smoothly: its centre is a line fitted to the bodies around a frame, so a swimmer who glides on is followed without lag; its
 * size is the largest that the bodies around need, averaged, so it neither jumps nor pumps with the kick. Marked points go
 * before followed ones, those before seen ones. Worked out frame by frame as it is asked for, and kept until points change.
 */
export const swimmerWindows = ({ postures, followed, seen, clip }: SwimmerPoints & Pick<Swim, 'clip'>) =>
  windowsOf(postures)(followed)(seen)(clip);

function makeWindows(points: SwimmerPoints, clip: Swim['clip'], times: readonly number[]): SwimmerWindows {
  const room = knownRooms(points, times);
  const around = framesAround(times);
  const centre = byFrame((frame) => fittedCentre(frame, around(frame, smoothSeconds), room, times));
  const need = byFrame((frame) => {
    const known = room(frame);
    const at = known && centre(frame);
    return known && at && halfSize(known, at);
  });
  const most = byFrame((frame) => {
    const sizes = around(frame, smoothSeconds).flatMap((each) => need(each) ?? []);
    return { x: Math.max(...sizes.map(({ x }) => x)), y: Math.max(...sizes.map(({ y }) => y)) };
  });
  const roomOn = byFrame((frame): Rect | null => {
    const at = room(frame) && centre(frame);
    if (!at) return null;
    let [x, y, weights] = [0, 0, 0];
    for (const each of around(frame, smoothSeconds)) {
      if (!room(each)) continue;
      const weight = nearness(frame, each, times);
      x += weight * most(each).x;
      y += weight * most(each).y;
      weights += weight;
    }
    const half = { x: x / weights, y: y / weights };
    return { x: at.x - half.x, y: at.y - half.y, width: 2 * half.x, height: 2 * half.y };
  });
  const windowOn = byFrame((frame): Rect | null => {
    const own = roomOn(frame);
    if (!own) return null;
    const now = times[frame] as number;
    const lost = around(frame, widenSeconds)
      .filter((each) => !room(each))
      .map((each) => Math.abs((times[each] as number) - now) / widenSeconds);
    const close = Math.min(1, ...lost);
    return widened(own, clip, 1 - close * close * (3 - 2 * close));
  });
  return { roomOn, windowOn };
}

/** A body's points, and how far each may lie beside its place, pixels. */
type Body = ReadonlyMap<LandmarkName, Point & { readonly off: number }>;

/** The room of each frame's body: by its points, or between two bodies near in time. */
function knownRooms(points: SwimmerPoints, times: readonly number[]): (frame: number) => Rect | null {
  const tall = swimmerHeight(points);
  if (tall === null) return () => null;
  const roomOf = (body: Body): Rect | null =>
    swimmerRoom(Object.fromEntries(body), tall, (name) => body.get(name)?.off ?? 0);
  const bodyOn = byFrame(knownBodies(points, tall));
  const own = byFrame((frame) => roomOf(bodyOn(frame)));
  const nearest = (frame: number, way: 1 | -1): number | null => {
    const from = times[frame] as number;
    for (let each = frame + way; each >= 0 && each < times.length; each += way) {
      if (Math.abs((times[each] as number) - from) > bridgeSeconds) return null;
      if (own(each)) return each;
    }
    return null;
  };
  return byFrame((frame) => {
    const here = own(frame);
    if (here) return here;
    const [before, after] = [nearest(frame, -1), nearest(frame, 1)];
    if (before === null || after === null) return null;
    const [from, now, to] = [times[before] as number, times[frame] as number, times[after] as number];
    if (to - from > bridgeSeconds) return null;
    const stray = tall * Math.min(strayMost, strayRate * Math.min(now - from, to - now));
    return roomOf(bodyBetween(bodyOn(before), bodyOn(after), (now - from) / (to - from), stray));
  });
}

/** Marked points of a frame, where there are none followed ones, and where there are none of those seen ones. */
function knownBodies({ postures, followed, seen }: SwimmerPoints, tall: number): (frame: number) => Body {
  const marked = new Map(postures.map((posture) => [posture.frame, posture]));
  return (frame) => {
    const posture = marked.get(frame);
    const body = new Map<LandmarkName, Point & { readonly off: number }>();
    for (const name of landmarkNames) {
      const at = posture?.points[name];
      if (at) body.set(name, { ...at, off: 0 });
    }
    for (const [name, { x, y, confidence }] of followedBodies(followed).get(frame) ?? [])
      if (!body.has(name) && !posture?.hidden.includes(name))
        body.set(name, { x, y, off: spreads * expectedErrorShare(confidence) * tall * stretchedHeights });
    for (const [name, { x, y, sd }] of seenBodies(seen).get(frame) ?? [])
      if (!body.has(name) && !seenArms.has(name)) body.set(name, { x, y, off: spreads * sd });
    return body;
  };
}

/** A body between two: what both have, on the straight way, each point off by its share of `stray`. */
function bodyBetween(one: Body, other: Body, share: number, stray: number): Body {
  return new Map(
    [...one].flatMap(([name, a]) => {
      const b = other.get(name);
      if (!b) return [];
      const off = Math.max(a.off, b.off) + stray * (strayOf[name] ?? 0);
      return [[name, { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y), off }] as const];
    }),
  );
}

/** The centre of a line fitted through the bodies' middles around a frame, nearer ones counting more. */
function fittedCentre(
  frame: number,
  around: readonly number[],
  room: (frame: number) => Rect | null,
  times: readonly number[],
): { readonly x: number; readonly y: number } | null {
  let [w, t, tt, x, y, tx, ty] = [0, 0, 0, 0, 0, 0, 0];
  for (const each of around) {
    const known = room(each);
    if (!known) continue;
    const weight = nearness(frame, each, times);
    const time = (times[each] as number) - (times[frame] as number);
    const [middleX, middleY] = [known.x + known.width / 2, known.y + known.height / 2];
    w += weight;
    t += weight * time;
    tt += weight * time * time;
    x += weight * middleX;
    y += weight * middleY;
    tx += weight * time * middleX;
    ty += weight * time * middleY;
  }
  if (w === 0) return null;
  const spread = w * tt - t * t;
  // two bodies at least, else there is no line
  if (spread < 1e-9 * w * w) return { x: x / w, y: y / w };
  return { x: (tt * x - t * tx) / spread, y: (tt * y - t * ty) / spread };
}

/** 1 for the frame itself, falling smoothly to 0 at the end of the smoothed time. */
function nearness(frame: number, other: number, times: readonly number[]): number {
  const share = ((times[other] as number) - (times[frame] as number)) / smoothSeconds;
  return Math.max(1e-9, (1 - share * share) ** 2);
}

const framesAround =
  (times: readonly number[]) =>
  (frame: number, reach: number): readonly number[] => {
    const now = times[frame] as number;
    const frames = [frame];
    for (const way of [-1, 1])
      for (let each = frame + way; Math.abs((times[each] ?? Infinity) - now) < reach; each += way)
        frames.push(each);
    return frames;
  };

const halfSize = (room: Rect, at: { readonly x: number; readonly y: number }) => ({
  x: Math.max(at.x - room.x, room.x + room.width - at.x),
  y: Math.max(at.y - room.y, room.y + room.height - at.y),
});

const edges = ({ x, y, width, height }: Rect) => [x, y, x + width, y + height] as const;

function between(one: Rect, other: Rect, share: number): Rect {
  const [left, top, right, bottom] = edges(one).map(
    (value, i) => value + share * ((edges(other)[i] ?? value) - value),
  ) as [number, number, number, number];
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/** A share of the way from a room, as far as it lies in the picture, to the whole picture. */
function widened(
  room: Rect,
  picture: { readonly width: number; readonly height: number },
  share: number,
): Rect {
  if (share <= 0) return room;
  return between(room, { x: 0, y: 0, width: picture.width, height: picture.height }, share);
}

/** Worked out once for a frame. */
function byFrame<T>(make: (frame: number) => T): (frame: number) => T {
  const kept = new Map<number, T>();
  return (frame) => {
    const known = kept.get(frame);
    if (known !== undefined) return known;
    const value = make(frame);
    kept.set(frame, value);
    return value;
  };
}

/** A room of a picture as a mirror shows it. */
export const mirroredRoom = (room: Rect | null, pictureWidth: number): Rect | null =>
  room && { ...room, x: pictureWidth - room.x - room.width };
