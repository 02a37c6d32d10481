import { firstAtOrAfter } from '../../../signal/first-at-or-after';
import { z95 } from '../../../uncertainty/normal-quantile';
import type { BodyContext } from './body-context';
import type { TimedEvent } from '../../timed-event';
import type { LandmarkTrace } from '../points/landmark-trace';

export interface ExchangedTurns {
  /** Marks at which the toes are on the wrong side, by time. */
  readonly marks: readonly TimedEvent[];
  /** Most pairs are wrong: the two kinds were taken for one another throughout. */
  readonly throughout: boolean;
}

/** A top and a bottom further apart than this many kicks are not of one kick. Our default. */
const ofOneKick = 1;

/** Seconds beside a mark within which a body line stands for it, as a share of the kick. Our default. */
const beside = 0.08;

/** Tops at which the toes are lower than at the bottoms beside them, well beyond what marking them is off. */
export function exchangedTurns(context: BodyContext, kick: number): ExchangedTurns {
  const trace = context.trace('toe');
  const turns = context.events.flatMap((mark) => {
    if (mark.event.kind !== 'kick-top' && mark.event.kind !== 'kick-bottom') return [];
    const y = heightNear(trace, mark.time, beside * kick);
    return y === null ? [] : [{ mark, y, isTop: mark.event.kind === 'kick-top' }];
  });
  const clear = z95 * Math.SQRT2 * trace.sd;
  const wrong = new Set<TimedEvent>();
  const right = new Set<TimedEvent>();
  for (const [i, to] of turns.entries()) {
    const from = turns[i - 1];
    if (!from || from.isTop === to.isTop || to.mark.time - from.mark.time > ofOneKick * kick) continue;
    const rise = (to.isTop ? 1 : -1) * (to.y - from.y);
    if (Math.abs(rise) < clear) continue;
    for (const { mark } of [from, to]) (rise < 0 ? wrong : right).add(mark);
  }
  const marks = [...wrong].filter((mark) => !right.has(mark)).sort((a, b) => a.time - b.time);
  return { marks, throughout: marks.length > right.size };
}

function heightNear(trace: LandmarkTrace, time: number, reach: number): number | null {
  const after = firstAtOrAfter(trace.times, time);
  let best: number | null = null;
  let nearest = reach;
  for (const i of [after - 1, after]) {
    const off = Math.abs((trace.times[i] ?? Number.POSITIVE_INFINITY) - time);
    if (off > nearest) continue;
    nearest = off;
    best = trace.y[i] ?? null;
  }
  return best;
}
