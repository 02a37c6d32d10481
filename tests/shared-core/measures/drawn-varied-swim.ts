import { aSwim } from '#tests/renderer/a-swim';
import { normal, seeded } from '../../../sample-clips/model/seeded';
import { type DrawnSwim, type Film, markInstants, type TrueInstant } from './drawn-swim';

/**
 * Butterfly of a swimmer who swims no two strokes alike: every instant of a stroke strays from the swimmer's own habit,
 * each stroke by itself. The truth is the habit, which the interval "this swimmer" is to hold.
 */
export function drawVariedSwim(seed: number): DrawnSwim {
  const random = seeded(seed);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const film: Film = { rate: between(50, 240), slowdown: 1, uneven: 0, eventSd: between(0.001, 0.004) };
  const period = between(0.95, 1.6);
  const strokes = 3 + Math.floor(random() * 10);
  const spread = between(0.01, 0.03) * period;
  const place = {
    catch: between(0.24, 0.34),
    shoulder: between(0.46, 0.52),
    exit: between(0.66, 0.72),
    top1: between(-0.04, 0.04),
    bottom1: between(0.18, 0.22),
    top2: between(0.42, 0.48),
    bottom2: between(0.66, 0.72),
  };
  const kinds = {
    catch: 'catch',
    shoulder: 'shoulder',
    exit: 'exit',
    top1: 'kick-top',
    bottom1: 'kick-bottom',
    top2: 'kick-top',
    bottom2: 'kick-bottom',
  } as const;
  const names = Object.keys(place) as (keyof typeof place)[];
  const instants: TrueInstant[] = [];
  let entry = 0.7;
  for (let i = 0; i <= strokes; i++) {
    instants.push({ kind: 'entry', time: entry });
    if (i === strokes) break;
    const seconds = period + spread * normal(random);
    for (const name of names) {
      const time = entry + place[name] * seconds + spread * normal(random);
      instants.push({ kind: kinds[name], time });
    }
    if (i % 2 === 0) instants.push({ kind: 'breath', time: entry + 0.6 * seconds });
    entry += seconds;
  }
  const truth = new Map<string, number>();
  const gap = (id: string, leg: number, hand: number): void => {
    // strokes with a breath are swum like the others
    for (const of of id.startsWith('gap-') ? ['', '-breathing', '-not-breathing'] : ['']) {
      truth.set(`${id}${of}`, 1000 * (leg - hand) * period);
      truth.set(`${id}${of}-percent`, 100 * (leg - hand));
    }
  };
  gap('kick1-top-to-entry', place.top1, 0);
  gap('kick1-bottom-to-entry', place.bottom1, 0);
  gap('kick2-top-to-exit', place.top2, place.exit);
  gap('kick2-bottom-to-exit', place.bottom2, place.exit);
  gap('gap-t1', place.top1, 0);
  gap('gap-t2', place.bottom1, place.catch);
  gap('gap-t3', place.top2, place.shoulder);
  gap('gap-t4', place.bottom2, place.exit);
  truth.set('stroke-rate', 60 / period);
  truth.set('phase-entry-catch', 100 * place.catch);
  truth.set('phase-pull', 100 * (place.shoulder - place.catch));
  truth.set('phase-push', 100 * (place.exit - place.shoulder));
  truth.set('phase-recovery', 100 * (1 - place.exit));
  const base = aSwim();
  const card = { ...base.card, stroke: 'butterfly' as const, arms: 'stroking' as const };
  const swim = markInstants(instants, film, random, { card });
  return { swim, eventSd: film.eventSd, film, instants, truth };
}

/** Kicking in which no two kicks are alike: each half kick lasts as long as it happens to. */
export function drawVariedKicking(seed: number): DrawnSwim {
  const random = seeded(seed);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const film: Film = { rate: between(50, 240), slowdown: 1, uneven: 0, eventSd: between(0.001, 0.004) };
  const period = 1 / between(1, 2.6);
  const downShare = between(0.42, 0.58);
  const spread = between(0.03, 0.06) * period;
  const kicks = 4 + Math.floor(random() * 9);
  const instants: TrueInstant[] = [];
  let time = 0.6;
  for (let i = 0; i < kicks; i++) {
    instants.push({ kind: 'kick-top', time });
    time += downShare * period + spread * normal(random);
    instants.push({ kind: 'kick-bottom', time });
    time += (1 - downShare) * period + spread * normal(random);
  }
  const truth = new Map([
    ['kick-tempo', period],
    ['kick-frequency', 1 / period],
    ['kick-rate-per-minute', 60 / period],
    ['down-kick-time', downShare * period],
    ['up-kick-time', (1 - downShare) * period],
    ['down-up-ratio', downShare / (1 - downShare)],
  ]);
  const base = aSwim();
  const card = { ...base.card, stroke: 'dolphin-kick' as const, arms: 'stretched' as const };
  const swim = markInstants(instants, film, random, { card });
  return { swim, eventSd: film.eventSd, film, instants, truth };
}
