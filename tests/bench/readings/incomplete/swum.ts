import type { EventKind } from '#core/marks/event-kind';
import type { LandmarkName } from '#core/marks/landmark';
import { seeded } from '../../../../sample-clips/model/seeded';

/** A swim as it was swum: places and instants known exactly at any phase of any cycle. Metres and seconds. */
export interface Swum {
  readonly base: 'kick' | 'stroke';
  /** Kicks in one cycle: 1 where cycles are kicks. */
  readonly kicks: number;
  readonly cycles: number;
  /** Mean seconds of a cycle. */
  readonly period: number;
  /** Last cycle's length less the first's, as a share of the mean. */
  readonly drift: number;
  readonly speed: number;
  readonly toe: number;
  readonly shoulder: number;
  readonly sharpness: number;
  /** Radians by which the kicks of a stroke come early and late by turns. */
  readonly warp: number;
  readonly waveNumber: number;
  /** How much the lag bends from a straight line on distance, radians a metre squared. */
  readonly bend: number;
  /** Phase of kick one's top after the hand entry, shares of the stroke. */
  readonly late: number;
  readonly hands: Readonly<Record<'catch' | 'shoulder' | 'navel' | 'exit', number>>;
  /** Standard deviation of a hand instant about its habit, shares of the cycle. */
  readonly stray: number;
  readonly breathesEvery: number;
  readonly rate: number;
  readonly eventSd: number;
  readonly landmarkSd: number;
  readonly pixelsPerMetre: number;
  /** Pictures from one body line to the next; 0: no body lines. */
  readonly every: number;
}

/** Metres behind the fingertip along a straight body, and size of the kick's wave there against the toe's. */
export const swumBody: Readonly<Record<LandmarkName, readonly [number, number]>> = {
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

/** Seconds of film before the first cycle and after the last. */
export const swumLead = 0.4;

export interface DrawWish {
  readonly base?: 'kick' | 'stroke';
  readonly lines?: boolean;
}

/** A swim of random technique, tempo and film; the ranges are wider than those of the coverage benches. */
export function drawSwum(seed: number, wish: DrawWish = {}): Swum {
  const random = seeded(seed);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const drawnBase = random() < 0.65 ? ('stroke' as const) : ('kick' as const);
  const base = wish.base ?? drawnBase;
  const lot = random();
  const kicks = base === 'kick' ? 1 : lot < 0.8 ? 2 : lot < 0.9 ? 1 : 3;
  const rates = [25, 30, 50, 60, 120, 240];
  const rate = random() < 0.3 ? between(25, 240) : (rates[Math.floor(6 * random())] ?? 50);
  const lined = random() < 0.5;
  const shoulder = between(0.46, 0.54);
  const exit = between(0.66, 0.76);
  return {
    base,
    kicks,
    cycles: 2 + Math.floor((base === 'kick' ? 12 : 9) * random()),
    period: base === 'kick' ? 1 / between(0.9, 2.8) : between(0.95, 1.7),
    drift: random() < 0.5 ? 0 : between(-0.1, 0.1),
    speed: between(0.9, 2),
    toe: between(0.15, 0.28),
    shoulder: base === 'stroke' && kicks > 1 ? between(0.03, 0.1) : 0,
    sharpness: between(0, 0.1),
    warp: kicks === 2 ? between(0, 0.5) : 0,
    waveNumber: between(1.7, 3.6),
    bend: between(-0.25, 0.25),
    late: between(-0.1, 0.1),
    hands: {
      catch: between(0.22, 0.34),
      shoulder,
      navel: shoulder + (exit - shoulder) * between(0.35, 0.6),
      exit,
    },
    stray: random() < 0.4 ? 0 : between(0.002, 0.02),
    breathesEvery: 1 + Math.floor(3 * random()),
    rate,
    eventSd: between(0.002, 0.012),
    landmarkSd: between(0.5, 3),
    pixelsPerMetre: between(120, 300),
    every: (wish.lines ?? lined) ? Math.max(1, Math.round((rate / 50) * between(0.7, 1.6))) : 0,
  };
}

/** Real time of a phase, in cycles from the first cycle's start. */
export function timeAt({ period, drift, cycles }: Swum, phase: number): number {
  return swumLead + period * (phase + (drift / 2) * (phase ** 2 / cycles - phase));
}

/** Phase of a real time, by Newton's steps. */
export function phaseAt(swum: Swum, time: number): number {
  let phase = (time - swumLead) / swum.period;
  for (let i = 0; i < 6; i++) {
    const pace = swum.period * (1 + swum.drift * (phase / swum.cycles - 0.5));
    phase -= (timeAt(swum, phase) - time) / pace;
  }
  return phase;
}

/** Radians by which the kick's wave comes later at a landmark than at the toe; negative nearer the head. */
export function lagOf({ waveNumber, bend }: Swum, name: LandmarkName): number {
  const d = swumBody[name][0] - 2.27;
  return waveNumber * d + bend * d * (d + 1.52);
}

/** Height of a landmark by phase, metres, drift in depth left aside. */
export function heightAt(swum: Swum, name: LandmarkName, phase: number): number {
  const [behind, share] = swumBody[name];
  const lag = lagOf(swum, name);
  const turn = 2 * Math.PI * phase;
  const kick = swum.kicks * (turn - 2 * Math.PI * swum.late) + swum.warp * Math.sin(turn) - lag;
  const own = swum.toe * share;
  return (
    own * Math.cos(kick) +
    own * swum.sharpness * Math.cos(2 * kick - 0.4) +
    swum.shoulder * (1 - 0.3 * behind) * Math.cos(turn - 0.7 - behind)
  );
}

export function placeAt(swum: Swum, name: LandmarkName, time: number): { x: number; y: number } {
  const [behind] = swumBody[name];
  const y = heightAt(swum, name, phaseAt(swum, time)) - (name === 'ear' ? 0.02 : 0);
  return { x: swum.speed * time + 2.4 - behind, y: y - 1.2 };
}

export interface Turn {
  readonly kind: 'kick-top' | 'kick-bottom';
  readonly phase: number;
}

/** Turns of the toe in one cycle by phase, from just before the cycle's start on. */
export function turnsOf(swum: Swum): readonly Turn[] {
  const slope = (p: number): number => heightAt(swum, 'toe', p + 1e-6) - heightAt(swum, 'toe', p - 1e-6);
  const step = 1 / 400;
  const turns: Turn[] = [];
  // kick one may begin before the hands go in
  const from = swum.base === 'stroke' ? swum.late - 0.11 : -0.001;
  for (let i = 0; i < 400; i++) {
    let [low, high] = [from + i * step, from + (i + 1) * step];
    const rising = slope(low) > 0;
    if (rising === slope(high) > 0) continue;
    for (let j = 0; j < 30; j++) {
      const middle = (low + high) / 2;
      if (slope(middle) > 0 === rising) low = middle;
      else high = middle;
    }
    turns.push({ kind: rising ? 'kick-top' : 'kick-bottom', phase: low });
  }
  return turns;
}

export interface Instant {
  readonly kind: EventKind;
  readonly time: number;
}

/** Every instant a coach could mark, in any order: hands of each stroke, kicks, breaths. */
export function instantsOf(swum: Swum, stray: () => number): readonly Instant[] {
  const out: Instant[] = [];
  const turns = turnsOf(swum);
  for (let i = 0; i <= swum.cycles; i++) {
    const add = (kind: EventKind, phase: number, off = 0): void => {
      out.push({ kind, time: timeAt(swum, i + phase + off) });
    };
    if (swum.base === 'stroke') add('entry', 0, swum.stray * stray());
    const last = i === swum.cycles;
    for (const { kind, phase } of turns) if (!last || (swum.base === 'kick' && phase < 0.3)) add(kind, phase);
    if (last || swum.base !== 'stroke') continue;
    for (const kind of ['catch', 'shoulder', 'navel', 'exit'] as const)
      add(kind, swum.hands[kind], swum.stray * stray());
    if (i % swum.breathesEvery === 0) add('breath', 0.62);
  }
  return out;
}
