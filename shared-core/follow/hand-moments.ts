import type { EventKind } from '../marks/event-kind';
import type { LandmarkName } from '../marks/landmark';
import { heightAboveSurface } from '../scene/surface-line';
import type { Scene } from '../swim-file/swim-schema';
import type { BodyTrace } from './body-trace';
import { crossingTimes } from './crossing-times';
import { traceParts } from './trace-parts';
import { type TraceMoment, turningTimes } from './turning-times';

export interface HandMoment extends TraceMoment {
  readonly kind: EventKind;
}

/** The water is not flat, and the line over it is drawn by hand: this share of the body length. Our default, no source. */
const surfaceShare = 0.005;
/** How far over or under the fingertips the wrist may be while the hand goes through the surface, share of the body length. Our default. */
const handShare = 0.02;
/** A swinging hand changes its speed by as much as this, body lengths a second². Our default. */
const handHurry = 25;
/**
 * The navel's place on the way from shoulder to hip joint, and how far a swimmer's may lie from there: shares of that way. Our
 * default from the proportions of standing adults, from memory, no source looked up.
 */
const navelShare = { value: 0.7, sd: 0.07 };
/** A trace with a longer hole is two traces where turns are looked for, seconds. */
const turnHole = 0.1;

/**
 * Hand entry and exit from where the fingertips cross the surface line (the wrist speaks for them where they are not sure),
 * the shoulder passage from where the hand's
 * middle passes under the shoulder, the navel passage from where it passes under the navel (that hands are closest together
 * there can't be seen from the side), the catch from where it stops going forward in front of the shoulder.
 *
 * @param trace in picture pixels, the camera's movement taken out
 * @param forward 1 when the swimmer goes right in the picture, −1 when left
 */
export function handMoments(
  scene: Pick<Scene, 'surface'>,
  trace: (name: LandmarkName) => BodyTrace,
  bodyLength: number,
  forward: 1 | -1 | null,
  cameraStands: boolean,
): readonly HandMoment[] {
  const surface = surfaceMoments(scene, trace, bodyLength);
  if (forward === null) return surface;
  const hand = handAgainstShoulder(trace, forward);
  const trunk = middleOf(hand.flatMap(({ toHip }) => toHip ?? []));
  return [
    ...surface,
    ...passages('shoulder', hand, bodyLength, 0, ({ ahead }) => ahead),
    ...(trunk === null
      ? []
      : passages('navel', hand, bodyLength, navelShare.sd * Math.abs(trunk), ({ ahead, toHip }) =>
          toHip === null ? null : ahead - navelShare.value * toHip,
        )),
    ...(cameraStands ? catches(hand, bodyLength) : []),
  ];
}

function surfaceMoments(
  scene: Pick<Scene, 'surface'>,
  trace: (name: LandmarkName) => BodyTrace,
  bodyLength: number,
): readonly HandMoment[] {
  const hand = new Map<number, { readonly time: number; height: number; weight: number }>();
  for (const name of ['fingertip', 'wrist'] as const) {
    const own = trace(name);
    for (const [i, frame] of own.frames.entries()) {
      const height = heightAboveSurface(scene, { x: own.x[i] as number, y: own.y[i] as number });
      if (!height) return [];
      const sd = Math.hypot(own.sd[i] as number, name === 'wrist' ? handShare * bodyLength : 0);
      const seen = hand.get(frame) ?? { time: own.times[i] as number, height: 0, weight: 0 };
      seen.height += height.pixels / sd ** 2;
      seen.weight += 1 / sd ** 2;
      hand.set(frame, seen);
    }
  }
  const rows = [...hand.values()].sort((a, b) => a.time - b.time);
  return crossingTimes({
    times: rows.map(({ time }) => time),
    values: rows.map(({ height, weight }) => height / weight),
    sds: rows.map(({ weight }) => 1 / Math.sqrt(weight)),
    zeroSd: surfaceShare * bodyLength,
    depth: 0.025 * bodyLength,
    hurry: handHurry * bodyLength,
  }).map(({ time, sd, rising }): HandMoment => ({ kind: rising ? 'exit' : 'entry', time, sd }));
}

/** Where the hand's middle, under the shoulder, passes backward a place of the body from which it is `from` ahead. */
function passages(
  kind: 'shoulder' | 'navel',
  hand: readonly HandPlace[],
  bodyLength: number,
  placeSd: number,
  from: (place: HandPlace) => number | null,
): readonly HandMoment[] {
  const known = hand.flatMap((place) => {
    const ahead = from(place);
    return ahead === null ? [] : [{ ...place, ahead }];
  });
  return crossingTimes({
    times: known.map(({ time }) => time),
    values: known.map(({ ahead }) => -ahead),
    sds: known.map(({ sd }) => sd),
    zeroSd: placeSd,
    depth: 0.05 * bodyLength,
    hurry: handHurry * bodyLength,
  })
    .filter(({ time, rising }) => rising && (nearestOf(known, time)?.under ?? false))
    .map(({ time, sd }): HandMoment => ({ kind, time, sd }));
}

const middleOf = (values: readonly number[]): number | null =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? null;

interface HandPlace {
  readonly frame: number;
  readonly time: number;
  /** Along travel, pixels. */
  readonly x: number;
  /** Along travel from the shoulder. */
  readonly ahead: number;
  readonly under: boolean;
  /** Along travel from the shoulder to the hip; null where the hip is not known. */
  readonly toHip: number | null;
  readonly sd: number;
}

/** The hand's middle against the shoulder, where fingertip, wrist and shoulder are known. */
function handAgainstShoulder(
  trace: (name: LandmarkName) => BodyTrace,
  forward: 1 | -1,
): readonly HandPlace[] {
  const fingertip = trace('fingertip');
  const [wrist, shoulder, hip] = [trace('wrist'), trace('shoulder'), trace('hip')];
  const places = (of: BodyTrace): ReadonlyMap<number, number> =>
    new Map(of.frames.map((frame, i) => [frame, i]));
  const wrists = places(wrist);
  const shoulders = places(shoulder);
  const hips = places(hip);
  return fingertip.frames.flatMap((frame, i) => {
    const w = wrists.get(frame);
    const s = shoulders.get(frame);
    const h = hips.get(frame);
    if (w === undefined || s === undefined) return [];
    const x = ((fingertip.x[i] as number) + (wrist.x[w] as number)) / 2;
    const y = ((fingertip.y[i] as number) + (wrist.y[w] as number)) / 2;
    return [
      {
        frame,
        time: fingertip.times[i] as number,
        x: forward * x,
        ahead: forward * (x - (shoulder.x[s] as number)),
        under: y > (shoulder.y[s] as number),
        toHip: h === undefined ? null : forward * ((hip.x[h] as number) - (shoulder.x[s] as number)),
        sd: Math.hypot(
          Math.hypot(fingertip.sd[i] as number, wrist.sd[w] as number) / 2,
          shoulder.sd[s] as number,
        ),
      },
    ];
  });
}

/** Where the hand's middle stops going forward, in front of the shoulder and under it. */
function catches(hand: readonly HandPlace[], bodyLength: number): readonly HandMoment[] {
  return traceParts(
    {
      frames: hand.map(({ frame }) => frame),
      times: hand.map(({ time }) => time),
      x: hand.map(({ x }) => x),
      y: hand.map(({ x }) => x),
      sd: hand.map(({ sd }) => sd),
    },
    turnHole,
  ).flatMap((part) =>
    turningTimes(part, part.x, 0.02 * bodyLength).flatMap(({ time, sd }): HandMoment[] => {
      const at = nearestOf(hand, time);
      return at !== null && at.ahead > 0 && at.under ? [{ kind: 'catch', time, sd }] : [];
    }),
  );
}

function nearestOf<T extends { readonly time: number }>(list: readonly T[], time: number): T | null {
  let best: T | null = null;
  for (const each of list) if (!best || Math.abs(each.time - time) < Math.abs(best.time - time)) best = each;
  return best && Math.abs(best.time - time) < turnHole ? best : null;
}
