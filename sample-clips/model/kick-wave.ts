import { type ChainJoint, fromToe, swingGain, type Technique } from './technique';

/**
 * The toes' height over one cycle, −1 to 1: half cosines from turn to turn, so that every top and bottom falls exactly
 * on its share. The largest kick goes from 1 to −1.
 */
export function kickShape(kicks: Technique['kicks']): (cycle: number) => number {
  const turns = kicks.flatMap(({ top, bottom, size }) => [
    { at: top, height: 2 * size - 1 },
    { at: bottom, height: -1 },
  ]);
  const first = turns[0];
  const last = turns.at(-1);
  if (!first || !last) return () => 0;
  const around = [{ ...last, at: last.at - 1 }, ...turns, { ...first, at: first.at + 1 }];
  return (cycle) => {
    const share = cycle - Math.floor(cycle);
    let i = 0;
    while (i < around.length - 2 && share >= (around[i + 1]?.at ?? 1)) i++;
    const from = around[i] ?? first;
    const to = around[i + 1] ?? last;
    const done = (share - from.at) / (to.at - from.at);
    return (from.height + to.height) / 2 + ((from.height - to.height) / 2) * Math.cos(Math.PI * done);
  };
}

/** Seconds by which a joint is ahead of the toes: the wave runs down the body at one speed. */
export function waveLead(technique: Technique, joint: ChainJoint): number {
  return (fromToe[joint] * technique.size) / technique.waveSpeed;
}

/** Height that the kick's wave gives a joint at a real time, metres, prone; the same shape at every joint, later and larger toward the toes. */
export function kickWave(technique: Technique): (joint: ChainJoint, time: number) => number {
  const shape = kickShape(technique.kicks);
  return (joint, time) =>
    technique.toeSwing *
    swingGain[joint] *
    shape((time + waveLead(technique, joint) - technique.startTime) / technique.period);
}
