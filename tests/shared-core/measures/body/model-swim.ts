import { eventKinds, type EventKind } from '#core/marks/event-kind';
import { type LandmarkName, landmarkNames } from '#core/marks/landmark';
import { type BodyContext, bodyContext } from '#core/measures/body/context/body-context';
import type { BodyInput } from '#core/measures/body/context/body-input';
import { bodyFamilies } from '#core/measures/body/body-families';
import type { ComputedReading, Reading } from '#core/measures/reading';
import { noTags } from '#core/swim-file/condition-tags';
import {
  emptyScene,
  type EventMark,
  plainMark,
  type Posture,
  type Swim,
  swimFileVersion,
} from '#core/swim-file/swim-schema';
import { type FrameTable, frameAtTick } from '#core/timeline/frame-table';
import { recordFromTable } from '#core/timeline/frame-times-record';
import type { MarkingError } from '#core/uncertainty/marking-error';

/** A swimmer made of sines: every landmark's place at any time is known exactly. All lengths in metres. */
export interface ModelSwim {
  readonly base: 'kick' | 'stroke';
  /** Period of the base, seconds. */
  readonly period: number;
  readonly cycles: number;
  readonly speed: number;
  /** Surge along travel at the kick's frequency: metres, half of peak-to-peak. */
  readonly surge: number;
  /** Height of the toe at the kick's frequency, half of peak-to-peak; the rest of the body is scaled from it. */
  readonly toe: number;
  /** Height at the stroke's own frequency at the shoulder, half of peak-to-peak; 0 for plain kicking. */
  readonly shoulder: number;
  /** Second harmonic of the kick, as a share of the first. */
  readonly sharpness: number;
  /** Third harmonic of the kick, as a share of the first. */
  readonly third: number;
  /** Kick's wave number, radians a metre toward the toes. */
  readonly waveNumber: number;
  readonly driftUp: number;
  readonly pixelsPerMetre: number;
  readonly framesPerSecond: number;
  /** Level of the picture, radians by which it drops to the right. */
  readonly tilt: number;
  readonly travel: 'left' | 'right';
  /** Postures at every nth frame; 0: at kick events only. */
  readonly every: number;
  /** Spread of the gaps between pictures as a share of the gap: 0 for an even rate. */
  readonly uneven: number;
  /** Share of landmarks that can't be seen. */
  readonly hidden: number;
  /** Mark the hands' catch, pass under the shoulders and exit as well, where strokes are swum. */
  readonly hands?: boolean;
  /** Body lines on the frames of all events, and not at every nth frame only. */
  readonly linesAtEvents?: boolean;
  /** Seconds by which the kick comes later in the stroke; the phases of harmonics are told for 0 only. */
  readonly late?: number;
  /** Mark a push-off and a breakout, with body lines on their frames. */
  readonly underwater?: boolean;
  /**
   * How much bigger or smaller each cycle's movement is than the swimmer's own, as a share, and that of the one after the
   * last, which is not marked but for its hand entry; none: all alike.
   */
  readonly sizes?: readonly number[];
}

/** Seconds before the first cycle, and after the last. */
export const modelLead = 0.3;

/** Places in the stroke of the hands' catch, pass under the shoulders and exit, as shares of it. */
export const handPlaces = { catch: 0.28, shoulder: 0.5, exit: 0.7 } as const;

/** True instants of the marked push-off and breakout. */
export const underwaterTimes = (m: ModelSwim): { pushOff: number; breakout: number } => ({
  pushOff: modelLead,
  breakout: modelLead + m.cycles * m.period,
});

export const plainKick: ModelSwim = {
  base: 'kick',
  period: 0.48,
  cycles: 7,
  speed: 1.4,
  surge: 0.01,
  toe: 0.24,
  shoulder: 0,
  sharpness: 0.08,
  third: 0.03,
  waveNumber: 2.6,
  driftUp: 0.05,
  pixelsPerMetre: 160,
  framesPerSecond: 60,
  tilt: 0.02,
  travel: 'right',
  every: 1,
  uneven: 0,
  hidden: 0,
};

/** Metres behind the fingertip along a straight body, and size of the wave there as a share of the toe's. */
export const modelBody: Record<LandmarkName, readonly [number, number]> = {
  fingertip: [0, 0.1],
  wrist: [0.18, 0.1],
  elbow: [0.45, 0.12],
  shoulder: [0.75, 0.16],
  ear: [0.72, 0.18],
  hip: [1.25, 0.35],
  knee: [1.67, 0.62],
  ankle: [2.07, 0.85],
  toe: [2.27, 1],
};

/** A stroke has its size from this share of a period before its hand entry on: no event but the entry is nearer to it. */
const sizesChange = 0.03;

export const kickOmega = (m: ModelSwim): number => ((m.base === 'stroke' ? 2 : 1) * 2 * Math.PI) / m.period;

export function truePlace(m: ModelSwim, name: LandmarkName, t: number): { x: number; y: number } {
  const [behind, share] = modelBody[name];
  const w = kickOmega(m);
  const lag = m.waveNumber * (behind - 2.27) + w * (m.late ?? 0);
  const last = (m.sizes?.length ?? 1) - 1;
  const cycle = Math.min(last, Math.max(0, Math.floor((t - modelLead) / m.period + sizesChange)));
  const size = 1 + (m.sizes?.[cycle] ?? 0);
  const first = size * m.toe * share;
  const y =
    first * Math.cos(w * t - lag) +
    first * m.sharpness * Math.cos(2 * (w * t - lag) - 0.4) +
    first * m.third * Math.cos(3 * (w * t - lag) + 0.9) +
    size * m.shoulder * (1 - 0.3 * behind) * Math.cos((w / 2) * t - 0.7 - behind);
  const head = name === 'ear' ? -0.02 : 0;
  return { x: m.speed * t + m.surge * Math.cos(w * t + 1) + 2.4 - behind, y: y + head + m.driftUp * t - 1.2 };
}

function tableOf(m: ModelSwim, seconds: number): FrameTable {
  const count = Math.ceil(seconds * m.framesPerSecond);
  const at = (i: number): number =>
    Math.round((90_000 * (i + m.uneven * 0.5 * Math.sin(i * 2.3 + Math.sin(i)))) / m.framesPerSecond);
  return {
    ticksPerSecond: 90_000,
    starts: Array.from({ length: count }, (_, i) => at(i) - at(0)),
    endTick: at(count) - at(0) + 1,
  };
}

export interface Noise {
  readonly normal: () => number;
  readonly landmarkSd: number;
  readonly eventSd: number;
  readonly scenePointSd: number;
  readonly offPlaneSd: number;
}
export const noNoise: Noise = {
  normal: () => 0,
  landmarkSd: 2,
  eventSd: 0.01,
  scenePointSd: 1.5,
  offPlaneSd: 0.01,
};

export function markedSwim(m: ModelSwim, noise: Noise = noNoise): BodyInput {
  const lead = modelLead;
  const table = tableOf(m, lead * 2 + m.cycles * m.period);
  // a picture wide enough for any number of cycles, as what lies outside of it is not read
  const origin = { x: m.travel === 'right' ? 900 : 29_000, y: m.tilt === 0 ? 100 : 5_000 };
  const scaleError = 1 + noise.offPlaneSd * noise.normal();
  const toPicture = (p: { x: number; y: number }): { x: number; y: number } => {
    const u = (m.travel === 'right' ? 1 : -1) * p.x * m.pixelsPerMetre * scaleError;
    const v = -p.y * m.pixelsPerMetre * scaleError;
    return {
      x: origin.x + u * Math.cos(m.tilt) - v * Math.sin(m.tilt),
      y: origin.y + u * Math.sin(m.tilt) + v * Math.cos(m.tilt),
    };
  };
  const jitter = (p: { x: number; y: number }, sd: number): { x: number; y: number } => ({
    x: p.x + sd * noise.normal(),
    y: p.y + sd * noise.normal(),
  });
  const frameAt = (t: number): number => {
    const f = frameAtTick(table, t * 90_000);
    const here = table.starts[f] ?? 0;
    const next = table.starts[f + 1] ?? here;
    // the coach picks the nearer frame
    return Math.abs(next - t * 90_000) < Math.abs(here - t * 90_000) ? f + 1 : f;
  };
  const events: EventMark[] = [];
  const mark = (kind: EventKind, t: number): void => {
    const frame = Math.max(0, frameAt(t + noise.eventSd * noise.normal()));
    events.push({ id: `e${events.length}`, kind, frame, ...plainMark });
  };
  const end = lead + m.cycles * m.period;
  for (const { time, kind } of toeTurns(m, end + lead)) {
    if (time >= lead - 1e-9 && time <= end + 1e-9) mark(kind, time);
  }
  if (m.base === 'stroke') for (let i = 0; i <= m.cycles; i++) mark('entry', lead + i * m.period);
  if (m.hands && m.base === 'stroke')
    for (let i = 0; i < m.cycles; i++)
      for (const kind of ['catch', 'shoulder', 'exit'] as const)
        mark(kind, lead + (i + handPlaces[kind]) * m.period);
  const lined: number[] = m.linesAtEvents ? events.map(({ frame }) => frame) : [];
  if (m.underwater) {
    const { pushOff, breakout } = underwaterTimes(m);
    mark('push-off', pushOff);
    mark('breakout', breakout);
    lined.push(...events.slice(-2).map((each) => each.frame));
  }
  const usual =
    m.every > 0
      ? table.starts.map((_, i) => i).filter((i) => i % m.every === 0)
      : [...new Set(events.filter((e) => e.kind.startsWith('kick')).map((e) => e.frame))];
  const frames = [...new Set([...usual, ...lined])].sort((a, b) => a - b);
  const postures = frames.map((frame): Posture => {
    const t = (table.starts[frame] ?? 0) / 90_000;
    const points: Posture['points'] = {};
    for (const [i, name] of landmarkNames.entries()) {
      // a fixed pattern of hidden landmarks, so that the same model always hides the same
      const lot = Math.abs(Math.sin(frame * 12.9898 + i * 78.233) * 43_758.5453) % 1;
      if (lot < m.hidden && !lined.includes(frame)) continue;
      points[name] = jitter(toPicture(truePlace(m, name, t)), noise.landmarkSd);
    }
    return { frame, points, hidden: [] };
  });
  // the known length and the level line stand still in the plane: no off-plane error of their own
  const ruler = (x: number, y: number): { x: number; y: number } => ({
    x: origin.x + x * Math.cos(m.tilt) - y * Math.sin(m.tilt),
    y: origin.y + x * Math.sin(m.tilt) + y * Math.cos(m.tilt),
  });
  const line = (a: [number, number], b: [number, number]): Swim['scene']['level'] => ({
    a: jitter(ruler(...a), noise.scenePointSd),
    b: jitter(ruler(...b), noise.scenePointSd),
  });
  const known = 2.5 * (1 + 0.01 * noise.normal());
  const swim: Swim = {
    format: 'submark-swim',
    version: swimFileVersion,
    id: 'model',
    createdAt: '2024-01-01T00:00:00Z',
    changedAt: '2024-01-01T00:00:00Z',
    clip: {
      place: { kind: 'inside', name: 'model.mp4' },
      originalName: 'model.mp4',
      fingerprint: { bytes: 0, edgesSha256: '0'.repeat(64) },
      track: null,
      fields: false,
      container: 'mp4',
      codec: 'avc',
      width: 30_000,
      height: 15_000,
      rotation: 0,
      frameTimes: recordFromTable(table),
      slowdown: { factor: 1, source: 'coach' },
    },
    card: {
      swimmerId: null,
      swimmerName: 'Invented swimmer',
      date: '2024-01-01',
      stroke: m.base === 'stroke' ? 'butterfly' : 'dolphin-kick',
      drill: '',
      arms: 'stretched',
      sideUp: 'front',
      aids: [],
      effort: null,
      distanceMetres: null,
      view: 'side',
      conditions: noTags,
      note: '',
      invented: true,
    },
    scene: {
      ...emptyScene,
      travel: m.travel,
      level: line([-800, 0], [800, 0]),
      surface: line([-800, 0], [800, 0]),
      scale: {
        line: line([0, 600], [2.5 * m.pixelsPerMetre, 600]) as NonNullable<Swim['scene']['scale']>['line'],
        metres: known,
        metresSd: 0.025,
        preset: null,
        frame: 0,
      },
    },
    events,
    postures,
    followed: [],
    seen: [],
    cameraPath: [],
    dismissed: [],
  };
  return { swim, clock: { table, slowdown: 1 }, error: markingError(noise), swimmer: null };
}

function markingError(noise: Pick<Noise, 'landmarkSd' | 'eventSd' | 'scenePointSd'>): MarkingError {
  return {
    basis: 'measured',
    measured: { events: [...eventKinds], landmarks: [...landmarkNames], followed: [...landmarkNames] },
    eventSd: Object.fromEntries(eventKinds.map((k) => [k, noise.eventSd])) as MarkingError['eventSd'],
    landmarkSd: Object.fromEntries(
      landmarkNames.map((n) => [n, noise.landmarkSd]),
    ) as MarkingError['landmarkSd'],
    followedSd: Object.fromEntries(
      landmarkNames.map((n) => [n, 2 * noise.landmarkSd]),
    ) as MarkingError['followedSd'],
    scenePointSd: noise.scenePointSd,
  };
}

interface ToeTurn {
  readonly time: number;
  readonly kind: 'kick-top' | 'kick-bottom';
  readonly y: number;
}

const turnsKept = new WeakMap<ModelSwim, { readonly until: number; readonly turns: readonly ToeTurn[] }>();

/** True tops and bottoms of the toe, drift left aside, by fine stepping and bisection. */
export function toeTurns(m: ModelSwim, until: number): readonly ToeTurn[] {
  const known = turnsKept.get(m);
  if (known && Math.abs(known.until - until) < 1e-9) return known.turns;
  const turns = turnsOf(m, until);
  turnsKept.set(m, { until, turns });
  return turns;
}

function turnsOf(m: ModelSwim, until: number): readonly ToeTurn[] {
  const level = (t: number): number => truePlace(m, 'toe', t).y - m.driftUp * t;
  const slope = (t: number): number => level(t + 1e-6) - level(t - 1e-6);
  const out: ToeTurn[] = [];
  const step = 0.004;
  let rising = slope(0) > 0;
  for (let t = 0; t < until; t += step) {
    const was = rising;
    rising = slope(t + step) > 0;
    if (was === rising) continue;
    let [low, high] = [t, t + step];
    for (let i = 0; i < 30; i++) {
      const middle = (low + high) / 2;
      if (slope(middle) > 0 === was) low = middle;
      else high = middle;
    }
    out.push({ time: low, kind: was ? 'kick-top' : 'kick-bottom', y: level(low) });
  }
  return out;
}

export function readAll(input: BodyInput): { context: BodyContext; readings: ReadonlyMap<string, Reading> } {
  const context = bodyContext(input);
  const readings = bodyFamilies.flatMap((family) => family.read(context));
  return { context, readings: new Map(readings.map((r) => [r.id, r])) };
}

export function computed(readings: ReadonlyMap<string, Reading>, id: string): ComputedReading {
  const reading = readings.get(id);
  if (reading?.status !== 'computed') throw new Error(`${id}: ${JSON.stringify(reading?.reasons)}`);
  return reading;
}
