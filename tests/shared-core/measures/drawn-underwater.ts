import { normal, seeded } from '../../../sample-clips/model/seeded';
import { type DrawnSwim, type Film, markInstants, type TrueInstant } from './drawn-swim';

/**
 * A random underwater part: push-off, dolphin kicks of one frequency, breakout, and distance marks around it. Between
 * the marks the speed is not steady: what that moves the breakout by is drawn as the readings take it to be.
 */
export function drawUnderwater(seed: number): DrawnSwim {
  const random = seeded(seed);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const film: Film = {
    rate: between(25, 240),
    slowdown: random() < 0.3 ? 4 : 1,
    uneven: random() < 0.5 ? 0 : 0.4,
    eventSd: between(0.002, 0.015),
  };
  const pushOff = between(0.3, 0.6);
  const under = between(2.5, 7);
  const breakout = pushOff + under;
  const frequency = between(1.2, 2.6);
  const down = between(0.4, 0.6) / frequency;
  const instants: TrueInstant[] = [
    { kind: 'push-off', time: pushOff },
    { kind: 'breakout', time: breakout },
  ];
  let kicks = 0;
  for (let time = pushOff + between(0.15, 0.4); time + down < breakout - 0.05; time += 1 / frequency) {
    kicks += 1;
    instants.push({ kind: 'kick-top', time });
    instants.push({ kind: 'kick-bottom', time: time + down });
  }
  const [before, after] = [between(0.2, 1.8), between(0.2, 1.8)];
  const gap = 5;
  const speed = gap / (before + after);
  const share = before / (before + after);
  const off = (): number => 0.01 * normal(random);
  const unsteady = 0.04 * gap * 4 * share * (1 - share) * normal(random);
  instants.push({ kind: 'distance-mark', time: breakout - before + off() / speed, metres: 5 });
  instants.push({ kind: 'distance-mark', time: breakout + after + off() / speed, metres: 5 + gap });
  const metres = 5 + gap * share + unsteady;
  const truth = new Map<string, number>([
    ['underwater-time', under],
    ['underwater-kicks', kicks],
    ['underwater-kick-frequency', frequency],
    ['underwater-kick-frequency-first-third', frequency],
    ['underwater-kick-frequency-middle-third', frequency],
    ['underwater-kick-frequency-last-third', frequency],
    ['underwater-distance-marks', metres],
    ['underwater-speed', metres / under],
  ]);
  return { swim: markInstants(instants, film, random), eventSd: film.eventSd, film, instants, truth };
}
