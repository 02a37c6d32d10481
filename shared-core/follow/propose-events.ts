import type { EventKind } from '../marks/event-kind';
import type { LandmarkName } from '../marks/landmark';
import type { Posture, Swim } from '../swim-file/swim-schema';
import { type ClipClock, frameAtRealTime, localFrameInterval, realTimeOf } from '../timeline/clip-clock';
import { type BodyTrace, bodyTrace } from './body-trace';
import { cameraPath } from './camera-path';
import { type HandMoment, handMoments } from './hand-moments';
import { lengthOfSeen } from './seen-points';
import { seenBodyLength } from './seen-body-length';
import { traceParts } from './trace-parts';
import { turningTimes } from './turning-times';

/** An event the traces speak for, until the coach decides. */
export interface EventProposal {
  /** The same for the same kind and frame. */
  readonly id: string;
  readonly kind: EventKind;
  /** The nearest frame, and how far from it the instant lies, in frames. */
  readonly frame: number;
  readonly frames: number;
  /** Real seconds from the first picture, and the standard deviation. */
  readonly time: number;
  readonly sdSeconds: number;
  /** A turn that can be seen, but hardly when: read from points that may be lost. */
  readonly unsure: boolean;
}

/** Times nearer than this to a marked event of the kind are that event; nearer to a rejected one, that one. Our choice. */
const sameSeconds = 0.1;
/** A trace with a hole longer than this is two traces, seconds. */
const longestHole = 0.1;
/** No instant is known to better than this share of a frame. */
const leastFrames = 0.15;
/** A thing that stands still is marked within this share of the body length. Our default. */
const markedShare = 0.004;
/**
 * Between strokes of the arms kicks are uneven and toes come through the surface: where a followed toe turns lies so far, seconds,
 * from the kick, beside what its points' spread says. From the drawn clips of docs/performance-tables.md.
 */
const unevenSeconds = 0.01;
/** A toe seen without a mark turns early by some of this, seconds, whatever its points' spread says. From the two clips seeing was set on. */
const seenSeconds = 0.006;
/** A moment known no better than this, seconds, is not worth proposing: a quarter of a quick kick. Our choice. */
const mostSeconds = 0.1;
/**
 * A toe that plainly turns is proposed all the same, as less sure, though its points may be lost: where it stands out by twice as
 * much, over longer holes, and known at least to so many seconds. Our choices.
 */
const plain = { standsOut: 0.12, hole: 0.25, seconds: 0.25 } as const;
const standsOut = 0.06;

/**
 * Proposes kick tops and bottoms from where the toe turns, hand entry and exit from where the fingertip crosses the
 * water surface line, the catch from where the hand stops going forward in front of the shoulder, and the shoulder
 * and navel passages from where the hand passes under the shoulder and under the navel. What is marked already or was rejected is left out. Ascending
 * in time. The catch needs a camera that stands still or whose movement is known; the surface line must be set for entry and exit. Points that are
 * not sure count too, with their spread. A toe that plainly turns where its points may be lost is proposed as less sure.
 */
export function proposeEvents(swim: Swim, clock: ClipClock): readonly EventProposal[] {
  const near = (each: EventProposal, mark: { readonly kind: EventKind; readonly frame: number }): boolean =>
    mark.kind === each.kind && Math.abs(realTimeOf(clock, mark.frame) - each.time) < sameSeconds;
  return possibleEvents(swim, clock).filter(
    (each) =>
      !swim.events.some((mark) => near(each, mark)) && !swim.dismissed.some((gone) => near(each, gone)),
  );
}

interface Kept {
  readonly of: readonly unknown[];
  readonly events: readonly EventProposal[];
}
const kept = new WeakMap<Swim['followed'], Kept>();

/** Everything the traces speak for, marked or not. Not looked for again while no point and no line moves. */
function possibleEvents(swim: Swim, clock: ClipClock): readonly EventProposal[] {
  const { postures, followed, seen, cameraPath: path, scene, clip, card } = swim;
  const of = [postures, seen, path, scene, clip, card.view, card.arms, clock.slowdown];
  const last = kept.get(followed);
  if (last?.of.every((each, i) => each === of[i])) return last.events;
  const events = findEvents(swim, clock);
  kept.set(followed, { of, events });
  return events;
}

function findEvents(swim: Swim, clock: ClipClock): readonly EventProposal[] {
  if (swim.card.view !== 'side') return [];
  // a film may show toes and no body line: about as long as a swimmer is filmed
  const bodyLength = seenBodyLength(swim.postures) ?? lengthOfSeen(swim.seen) ?? swim.clip.height / 3;
  const camera = cameraPath(swim, markedShare * bodyLength);
  const steady = camera.state === 'carried' ? camera.steady : undefined;
  const trace = (name: LandmarkName): BodyTrace => bodyTrace(swim, name, clock, bodyLength, steady);
  // arms seen without a mark are off by a tenth of the body length and make moments of nothing
  const known = { ...swim, seen: [] };
  const handTrace = (name: LandmarkName): BodyTrace => bodyTrace(known, name, clock, bodyLength, steady);
  const end = realTimeOf(clock, clock.table.starts.length - 1);
  const besides = Math.hypot(
    swim.card.arms === 'stroking' ? unevenSeconds : 0,
    swim.seen.length > 0 ? seenSeconds : 0,
  );
  const sure = [
    ...traceParts(trace('toe'), longestHole).flatMap((part) =>
      kickTurns(part, standsOut * bodyLength, besides),
    ),
    ...(swim.card.arms === 'stroking'
      ? handMoments(
          swim.scene,
          handTrace,
          bodyLength,
          forwardOf(swim),
          camera.state === 'carried' ||
            (camera.state === 'stands' && (camera.looked || goesAlong(handTrace('shoulder'), bodyLength))),
        )
      : []),
  ];
  const kept = sure.filter(({ sd }) => sd <= mostSeconds);
  const seen = traceParts(bodyTrace(swim, 'toe', clock, bodyLength, steady, 0), plain.hole)
    .flatMap((part) => kickTurns(part, plain.standsOut * bodyLength, besides))
    .filter(
      ({ kind, time, sd }) =>
        sd <= plain.seconds &&
        !kept.some((each) => each.kind === kind && Math.abs(each.time - time) < 2 * sameSeconds),
    );
  return [
    ...kept.map((moment) => ({ ...moment, unsure: false })),
    ...seen.map((moment) => ({ ...moment, unsure: true, sd: Math.max(moment.sd, mostSeconds) })),
  ]
    .filter(({ time }) => time >= 0 && time <= end)
    .map((moment) => proposalOf(moment, clock))
    .sort((a, b) => a.time - b.time);
}

function proposalOf(
  { kind, time, sd, unsure }: HandMoment & Pick<EventProposal, 'unsure'>,
  clock: ClipClock,
): EventProposal {
  const under = frameAtRealTime(clock, time);
  const next = Math.min(under + 1, clock.table.starts.length - 1);
  const frame = realTimeOf(clock, next) - time < time - realTimeOf(clock, under) ? next : under;
  const interval = localFrameInterval(clock, frame);
  const frames = Math.max(-1, Math.min(1, (time - realTimeOf(clock, frame)) / interval));
  return {
    id: `${kind}-${frame}`,
    kind,
    frame,
    frames,
    time,
    sdSeconds: Math.max(leastFrames * interval, sd),
    unsure,
  };
}

function kickTurns(trace: BodyTrace, prominence: number, besides: number): readonly HandMoment[] {
  const turns = (sign: 1 | -1, kind: EventKind): readonly HandMoment[] =>
    turningTimes(
      trace,
      trace.y.map((y) => -sign * y),
      prominence,
    ).map(({ time, sd }) => ({ kind, time, sd: Math.hypot(sd, besides) }));
  return [...turns(1, 'kick-top'), ...turns(-1, 'kick-bottom')];
}

/** The way the swimmer goes in the picture: as the coach said, else head before hips. */
function forwardOf({ scene, postures }: Pick<Swim, 'scene' | 'postures'>): 1 | -1 | null {
  if (scene.travel) return scene.travel === 'left' ? -1 : 1;
  const ahead = (posture: Posture): number => {
    const head = posture.points.ear ?? posture.points.shoulder;
    const { hip } = posture.points;
    return head && hip ? Math.sign(head.x - hip.x) : 0;
  };
  const sum = postures.reduce((total, posture) => total + ahead(posture), 0);
  return sum === 0 ? null : sum > 0 ? 1 : -1;
}

/**
 * Where nobody has looked at the background: a swimmer who stays put in the picture is followed by the camera, and then what
 * goes backward in the water can't be seen.
 */
function goesAlong(shoulder: BodyTrace, bodyLength: number): boolean {
  const last = shoulder.frames.length - 1;
  if (last < 1) return false;
  const seconds = (shoulder.times[last] as number) - (shoulder.times[0] as number);
  const gone = Math.abs((shoulder.x[last] as number) - (shoulder.x[0] as number));
  return seconds > 0 && gone / seconds > 0.35 * bodyLength;
}
