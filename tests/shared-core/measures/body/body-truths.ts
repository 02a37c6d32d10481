import type { EventKind } from '#core/marks/event-kind';
import { bodyChain, type LandmarkName, landmarkNames } from '#core/marks/landmark';
import type { BodyContext } from '#core/measures/body/context/body-context';
import type { BodyInput } from '#core/measures/body/context/body-input';
import { centreWeights } from '#core/measures/body/context/centre-of-mass';
import { neighbours } from '#core/measures/body/wave/phase-lag';
import type { PosturePoints } from '#core/measures/body/posture/posture-measure';
import { postureMeasures } from '#core/measures/body/posture/posture-measures';
import { fitLine } from '#core/signal/fit-line';
import { realTimeOf } from '#core/timeline/clip-clock';
import {
  handPlaces,
  kickOmega,
  modelBody,
  modelLead,
  type ModelSwim,
  toeTurns,
  truePlace,
  underwaterTimes,
} from './model-swim';

const lead = modelLead;
const mean = (values: readonly number[]): number => values.reduce((s, v) => s + v, 0) / values.length;

/**
 * What each landmark reading is in truth: from the model alone, by fine sampling of one whole cycle, and for postures
 * by the true places on the marked frames.
 */
export function bodyTruths(m: ModelSwim, context: BodyContext): Map<string, number> {
  const { input } = context;
  const out = new Map<string, number>();
  // the extreme of 600 samples falls short of the wave's by a few parts in a hundred thousand
  const times = Array.from({ length: 600 }, (_, i) => lead + (i / 600) * m.period);
  const dt = 1e-5;
  const weights = centreWeights('mean');
  const bodyLength = bodyLengthOf(m, context);
  const undulation = (name: string, heights: readonly number[]): void => {
    const extent = Math.max(...heights) - Math.min(...heights);
    out.set(`undulation-${name}`, extent);
    out.set(`undulation-relative-${name}`, extent / bodyLength);
  };
  const centre = times.map(() => 0);
  for (const name of landmarkNames) {
    const heights = times.map((t) => truePlace(m, name, t).y - m.driftUp * t);
    undulation(name, heights);
    const weight = weights[name] ?? 0;
    heights.forEach((y, i) => {
      centre[i] = (centre[i] ?? 0) + weight * y;
    });
  }
  undulation('centre-of-mass', centre);
  const kick = kickHeight(m);
  out.set('kick-amplitude-toe', kick);
  out.set('kick-amplitude-toe-relative', kick / bodyLength);
  const toe = (t: number): number => truePlace(m, 'toe', t).y - m.driftUp * t;
  const up = times.map((t) => (toe(t + dt) - toe(t - dt)) / (2 * dt));
  out.set('foot-speed-up', Math.max(...up));
  out.set('foot-speed-down', -Math.min(...up));
  out.set('foot-speed-ratio', -Math.min(...up) / Math.max(...up));
  out.set('foot-speed-over-swim', -Math.min(...up) / m.speed);
  const ahead = times.map((t) => (truePlace(m, 'hip', t + dt).x - truePlace(m, 'hip', t - dt).x) / (2 * dt));
  out.set('speed-hip', m.speed);
  out.set('speed-centre-of-mass', m.speed);
  out.set('speed-lowest', Math.min(...ahead));
  out.set('speed-highest', Math.max(...ahead));
  out.set('speed-variation', (100 * kickOmega(m) * m.surge) / Math.SQRT2 / m.speed);
  harmonicTruths(m, out);
  let s = 0;
  const chain = ['shoulder', 'hip', 'knee', 'ankle', 'toe'] as const;
  const along = chain.map((name, i) => {
    const before = chain[i - 1];
    s += before ? modelBody[name][0] - modelBody[before][0] : 0;
    return s;
  });
  const line = fitLine(
    along,
    chain.map((name) => m.waveNumber * modelBody[name][0]),
  );
  out.set('body-wave-speed', kickOmega(m) / (line?.slope ?? Number.NaN));
  out.set('body-wave-length', (2 * Math.PI) / (line?.slope ?? Number.NaN));
  for (const [near, far] of neighbours) {
    const lag = m.waveNumber * (modelBody[far][0] - modelBody[near][0]);
    out.set(`phase-lag-${near}-${far}`, (lag * 180) / Math.PI);
    if (near !== 'ear') out.set(`wave-speed-${near}-${far}`, kickOmega(m) / m.waveNumber);
  }
  postureTruths(m, input, bodyLength, out);
  return out;
}

function meanDistance(m: ModelSwim, a: LandmarkName, b: LandmarkName, times: readonly number[]): number {
  return mean(
    times.map((t) => {
      const [p, q] = [truePlace(m, a, t), truePlace(m, b, t)];
      return Math.hypot(p.x - q.x, p.y - q.y);
    }),
  );
}

/** True length along the chain over the body lines that the readings take it from. */
function bodyLengthOf(m: ModelSwim, { bodyLength, input }: BodyContext): number {
  const times = (bodyLength?.frames ?? []).map((f) => realTimeOf(input.clock, f));
  return bodyChain
    .slice(1)
    .reduce((sum, name, i) => sum + meanDistance(m, bodyChain[i] ?? name, name, times), 0);
}

/** Mean height of each true turn of the toe over the line between its neighbours, drift left aside. */
function kickHeight(m: ModelSwim): number {
  const turns = toeTurns(m, 2 * lead + m.cycles * m.period).filter(
    (v) => v.time >= lead - 1e-9 && v.time <= lead + m.cycles * m.period + 1e-9,
  );
  return mean(
    turns.slice(1, -1).map((v, i) => {
      const [a, b] = [turns[i], turns[i + 2]];
      if (!a || !b) return Number.NaN;
      return Math.abs(v.y - (a.y + ((b.y - a.y) * (v.time - a.time)) / (b.time - a.time)));
    }),
  );
}

function harmonicTruths(m: ModelSwim, out: Map<string, number>): void {
  for (const name of landmarkNames) {
    const [behind, share] = modelBody[name];
    const kick = m.toe * share;
    const stroke = m.shoulder * (1 - 0.3 * behind);
    const sizes = m.base === 'stroke' ? [stroke, kick] : [kick, kick * m.sharpness, kick * m.third];
    const total = sizes.reduce((sum, c) => sum + c * c, 0);
    sizes.forEach((c, i) => {
      out.set(`harmonic-${i + 1}-${name}`, c);
      out.set(`harmonic-share-${i + 1}-${name}`, (100 * c * c) / total);
    });
  }
}

/** `bodyTruths`, and those of readings made of several, of phases and of the underwater part. */
export function allTruths(m: ModelSwim, context: BodyContext): Map<string, number> {
  const out = bodyTruths(m, context);
  const waveSpeed = out.get('body-wave-speed') ?? Number.NaN;
  const frequency = kickOmega(m) / (2 * Math.PI);
  out.set('kick-frequency', frequency);
  out.set('strouhal', (frequency * (out.get('kick-amplitude-toe') ?? Number.NaN)) / m.speed);
  if (m.speed <= waveSpeed) out.set('froude', (waveSpeed + m.speed) / (2 * waveSpeed));
  out.set('distance-per-kick', m.speed / frequency);
  if (m.base === 'stroke') {
    out.set('stroke-length', m.speed * m.period);
    out.set('stroke-index', m.speed ** 2 * m.period);
  }
  if (m.underwater) {
    const { pushOff, breakout } = underwaterTimes(m);
    const metres = truePlace(m, 'ear', breakout).x - truePlace(m, 'toe', pushOff).x;
    out.set('underwater-distance-scale', metres);
    out.set('underwater-speed-scale', metres / (breakout - pushOff));
  }
  phaseTruths(m, out);
  return out;
}

/**
 * Postures at events as the swimmer means them: at the true instants of the events, not on the pictures that were marked,
 * over the body length the readings take.
 */
export function habitualPostures(m: ModelSwim, context: BodyContext): Map<string, number> {
  const out = new Map<string, number>();
  const end = lead + m.cycles * m.period;
  const strokes = Array.from({ length: m.cycles + 1 }, (_, i) => lead + i * m.period);
  const turns = toeTurns(m, end + lead).filter((v) => v.time >= lead - 1e-9 && v.time <= end + 1e-9);
  const times = (kind: EventKind): readonly number[] => {
    if (kind === 'entry') return strokes;
    if (kind === 'catch' || kind === 'shoulder' || kind === 'exit')
      return strokes.slice(0, -1).map((start) => start + handPlaces[kind] * m.period);
    return turns.filter((each) => each.kind === kind).map((each) => each.time);
  };
  const length = bodyLengthOf(m, context);
  for (const measure of postureMeasures)
    for (const kind of measure.at) {
      const values = times(kind).map((t) => {
        if (measure.kind === 'depth') return truePlace(m, measure.needs[0] ?? 'hip', t).y;
        const real: PosturePoints = {};
        for (const name of landmarkNames) real[name] = truePlace(m, name, t);
        return measure.read(real, { belly: 1, sd: 0 }) ?? Number.NaN;
      });
      out.set(
        `${measure.id}-at-${kind}`,
        measure.kind === 'length' ? (100 * mean(values)) / length : mean(values),
      );
    }
  return out;
}

/** Phases of the harmonics, degrees, from the hand entry or the top of the kick. */
function phaseTruths(m: ModelSwim, out: Map<string, number>): void {
  const turn = toeTurns(m, 2 * lead + m.cycles * m.period).find((each) => each.kind === 'kick-top');
  const origin = m.base === 'stroke' ? lead : (turn?.time ?? Number.NaN);
  const w = kickOmega(m);
  for (const name of landmarkNames) {
    const [behind] = modelBody[name];
    const lag = m.waveNumber * (behind - 2.27) - w * origin;
    const phases =
      m.base === 'stroke' ? [0.7 + behind - (w / 2) * origin, lag] : [lag, 2 * lag + 0.4, 3 * lag - 0.9];
    phases.forEach((phase, i) => {
      out.set(`harmonic-phase-${i + 1}-${name}`, (phase * 180) / Math.PI);
    });
  }
}

function postureTruths(m: ModelSwim, input: BodyInput, bodyLength: number, out: Map<string, number>): void {
  const glide = markedGlide(input);
  const bodies = new Map(
    input.swim.postures.map(({ frame }) => {
      const t = realTimeOf(input.clock, frame);
      return [frame, landmarkNames.map((name) => [name, truePlace(m, name, t)] as const)];
    }),
  );
  for (const measure of postureMeasures) {
    const seen = input.swim.postures.filter((p) => measure.needs.every((name) => p.points[name]));
    const values = seen.map(({ frame, points }) => {
      const t = realTimeOf(input.clock, frame);
      if (measure.kind === 'depth') {
        const y = truePlace(m, measure.needs[0] ?? 'hip', t).y;
        return { frame, value: measure.id === 'depth-hip' ? -y : y };
      }
      const real: PosturePoints = {};
      for (const [name, at] of bodies.get(frame) ?? []) if (points[name]) real[name] = at;
      return { frame, value: measure.read(real, { belly: 1, sd: 0 }) ?? Number.NaN };
    });
    const summary = (list: readonly { value: number }[]): number => {
      const raw = mean(list.map((v) => v.value));
      const size = measure.combine === 'root' ? Math.sqrt(raw) : raw;
      return measure.kind === 'length' ? (100 * size) / bodyLength : size;
    };
    out.set(measure.id, summary(values));
    const gliding = values.filter(({ frame }) => glide && glide.from <= frame && frame <= glide.to);
    if (measure.inGlide && gliding.length > 0) out.set(`${measure.id}-in-glide`, summary(gliding));
    for (const kind of measure.at) {
      const at = new Set(input.swim.events.filter((e) => e.kind === kind).map((e) => e.frame));
      const there = values.filter((v) => at.has(v.frame));
      if (there.length > 0) out.set(`${measure.id}-at-${kind}`, summary(there));
    }
  }
}

/** Frames of the push-off and of the first kick mark after it, as marked. */
function markedGlide({ swim: { events } }: BodyInput): { from: number; to: number } | null {
  const from = Math.min(...events.flatMap((e) => (e.kind === 'push-off' ? e.frame : [])));
  const kicks = events.flatMap((e) => (e.kind.startsWith('kick-') && e.frame > from ? e.frame : []));
  return kicks.length > 0 ? { from, to: Math.min(...kicks) } : null;
}
