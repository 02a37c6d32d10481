import type { LandmarkName } from '#core/marks/landmark';
import { landmarkNames } from '#core/marks/landmark';
import { gapKinds } from '#core/measures/events/gaps';
import { fitLine } from '#core/signal/fit-line';
import { heightAt, type Instant, placeAt, type Swum, timeAt, turnsOf } from './swum';

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
const steps = 240;

/**
 * What each reading is in truth, from the swim as it was swum and nothing of how it was marked: each reading's own definition
 * worked out on the very instants and places.
 */
export function swumTruths(swum: Swum, instants: readonly Instant[]): ReadonlyMap<string, number> {
  const out = new Map<string, number>();
  const kick = kickPeriod(swum);
  out.set('kick-frequency', 1 / kick);
  out.set('kick-tempo', kick);
  out.set('kick-rate-per-minute', 60 / kick);
  out.set('speed-hip', swum.speed);
  out.set('speed-centre-of-mass', swum.speed);
  out.set('distance-per-kick', swum.speed * kick);
  if (swum.base === 'stroke') {
    const entries = instants.filter(({ kind }) => kind === 'entry');
    const stroke = commonPeriod([entries.map(({ time }, i) => [i, time] as const)]);
    out.set('stroke-rate', 60 / stroke);
    out.set('stroke-length', swum.speed * stroke);
    out.set('stroke-index', swum.speed ** 2 * stroke);
    handTruths(swum, instants, out);
  }
  halfKicks(instants, out);
  if (swum.every > 0) bodyTruths(swum, out);
  return out;
}

function handTruths(swum: Swum, instants: readonly Instant[], out: Map<string, number>): void {
  const of = (kind: Instant['kind']): readonly number[] =>
    instants.filter((each) => each.kind === kind).map((each) => each.time);
  const entries = of('entry');
  const lengths = entries.slice(1).map((time, i) => time - (entries[i] ?? time));
  const hands = { entry: entries, catch: of('catch'), shoulder: of('shoulder'), exit: of('exit') };
  const phase = (id: string, from: keyof typeof hands, to: keyof typeof hands | 'next'): void => {
    const ends = to === 'next' ? entries.slice(1) : hands[to];
    const shares = lengths.map((length, i) => (100 * ((ends[i] ?? 0) - (hands[from][i] ?? 0))) / length);
    out.set(id, mean(shares));
  };
  phase('phase-entry-catch', 'entry', 'catch');
  phase('phase-pull', 'catch', 'shoulder');
  phase('phase-push', 'shoulder', 'exit');
  phase('phase-recovery', 'exit', 'next');
  if (swum.kicks !== 2) return;
  const turns = turnsOf(swum);
  const phases = {
    top: turns.filter((t) => t.kind === 'kick-top'),
    bottom: turns.filter((t) => t.kind !== 'kick-top'),
  };
  for (const { id, kick, leg, hand } of gapKinds) {
    const at = phases[leg][kick - 1]?.phase ?? Number.NaN;
    const gaps = lengths.map((_, i) => timeAt(swum, i + at) - (hands[hand][i] ?? 0));
    out.set(id, 1000 * mean(gaps));
    out.set(`${id}-percent`, mean(gaps.map((gap, i) => (100 * gap) / (lengths[i] ?? 1))));
  }
}

/** Common period of rows of instants by least squares of time on number, each row with an offset of its own. */
function commonPeriod(rows: readonly (readonly (readonly [number, number])[])[]): number {
  let [nn, nt] = [0, 0];
  for (const row of rows) {
    const middle = mean(row.map(([number]) => number));
    for (const [number, time] of row) {
      nn += (number - middle) ** 2;
      nt += (number - middle) * time;
    }
  }
  return nt / nn;
}

/** Seconds of a whole kick: in strokes each kick of the stroke comes again once a stroke. */
function kickPeriod(swum: Swum): number {
  const rows = turnsOf(swum).map(({ phase }) => {
    const more = swum.base === 'kick' && phase < 0.3 ? 1 : 0;
    return Array.from({ length: swum.cycles + more }, (_, i) => [i, timeAt(swum, i + phase)] as const);
  });
  return commonPeriod(rows) / swum.kicks;
}

function halfKicks(instants: readonly Instant[], out: Map<string, number>): void {
  const turns = instants
    .filter(({ kind }) => kind === 'kick-top' || kind === 'kick-bottom')
    .sort((a, b) => a.time - b.time);
  const halves = (kind: Instant['kind']): number =>
    mean(
      turns.slice(1).flatMap(({ time }, i) => (turns[i]?.kind === kind ? time - (turns[i]?.time ?? 0) : [])),
    );
  const [down, up] = [halves('kick-top'), halves('kick-bottom')];
  out.set('down-kick-time', down);
  out.set('up-kick-time', up);
  out.set('down-up-ratio', down / up);
}

/** Amplitude and phase of a landmark's wave that goes `k` times a cycle, by its mean over one cycle. */
function harmonicOf(swum: Swum, name: LandmarkName, k: number): { size: number; phase: number } {
  let [a, b] = [0, 0];
  for (let i = 0; i < steps; i++) {
    const turn = (2 * Math.PI * k * i) / steps;
    const y = heightAt(swum, name, i / steps);
    a += (2 * y * Math.cos(turn)) / steps;
    b += (2 * y * Math.sin(turn)) / steps;
  }
  return { size: Math.hypot(a, b), phase: Math.atan2(b, a) };
}

const near = (angle: number, other: number): number =>
  other + angle - other - 2 * Math.PI * Math.round((angle - other) / (2 * Math.PI));

function bodyTruths(swum: Swum, out: Map<string, number>): void {
  // readings take distances along travel, not along the bent body
  const apart = (a: LandmarkName, b: LandmarkName): number => placeAt(swum, a, 0).x - placeAt(swum, b, 0).x;
  for (const name of landmarkNames) {
    const heights = Array.from({ length: steps }, (_, i) => heightAt(swum, name, i / steps));
    out.set(`undulation-${name}`, Math.max(...heights) - Math.min(...heights));
    for (const k of [1, 2, 3]) out.set(`harmonic-${k}-${name}`, harmonicOf(swum, name, k).size);
  }
  const toes = turnsOf(swum).map(({ phase }) => ({ phase, y: heightAt(swum, 'toe', phase) }));
  const around = [...toes.slice(-1), ...toes, ...toes.slice(0, 1)];
  const amplitude = mean(
    toes.map((turn, i) => {
      const [a, b] = [around[i], around[i + 2]];
      if (!a || !b) return Number.NaN;
      const from = a.phase > turn.phase ? a.phase - 1 : a.phase;
      const to = b.phase < turn.phase ? b.phase + 1 : b.phase;
      return Math.abs(turn.y - (a.y + ((b.y - a.y) * (turn.phase - from)) / (to - from)));
    }),
  );
  out.set('kick-amplitude-toe', amplitude);
  const speeds = Array.from({ length: steps }, (_, i) => {
    const d = 1e-5;
    return (
      (heightAt(swum, 'toe', i / steps + d) - heightAt(swum, 'toe', i / steps - d)) / (2 * d * swum.period)
    );
  });
  out.set('foot-speed-down', -Math.min(...speeds));
  out.set('foot-speed-up', Math.max(...speeds));
  const frequency = out.get('kick-frequency') ?? Number.NaN;
  out.set('strouhal', (frequency * amplitude) / swum.speed);
  const chain = ['shoulder', 'hip', 'knee', 'ankle', 'toe'] as const;
  let along = 0;
  const ways = chain.map((name, i) => {
    const before = chain[i - 1];
    along += before ? apart(before, name) : 0;
    return along;
  });
  const phases: number[] = [];
  for (const name of chain) {
    const { phase } = harmonicOf(swum, name, swum.kicks);
    const last = phases.at(-1);
    phases.push(last === undefined ? phase : near(phase, last));
  }
  const line = fitLine(ways, phases);
  const omega = 2 * Math.PI * frequency;
  if (line) {
    const wave = omega / line.slope;
    out.set('body-wave-speed', wave);
    out.set('body-wave-length', (2 * Math.PI) / line.slope);
    if (swum.speed <= wave) out.set('froude', (wave + swum.speed) / (2 * wave));
  }
  const pairs = [['ear', 'shoulder'], ...chain.slice(1).map((name, i) => [chain[i], name])] as [
    LandmarkName,
    LandmarkName,
  ][];
  for (const [a, b] of pairs) {
    const from = harmonicOf(swum, a, swum.kicks).phase;
    const lag = near(harmonicOf(swum, b, swum.kicks).phase, from) - from;
    out.set(`phase-lag-${a}-${b}`, (lag * 180) / Math.PI);
    if (a !== 'ear') out.set(`wave-speed-${a}-${b}`, (apart(a, b) * omega) / lag);
  }
}
