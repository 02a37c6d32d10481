import type { EventKind } from '../marks/event-kind';
import type { SwimCard } from '../swim-file/swim-schema';
import type { EventProposal } from './propose-events';

/** A moment that is marked already. */
export interface MarkedMoment {
  readonly kind: EventKind;
  /** Real seconds. */
  readonly time: number;
}

/** What is looked at together: a stroke, or a few kicks. Never empty. */
export interface ReviewGroup {
  /** From 1. */
  readonly number: number;
  readonly of: 'stroke' | 'kicks';
  /** Still to be decided, ascending in time. */
  readonly open: readonly EventProposal[];
  readonly accepted: number;
}

/** A kick may begin this long before the hands go in, real seconds, and belongs to their stroke. Our choice. */
const kickLead = 0.15;
/** Kicks looked at together where there are no hands: as many as the guided pass marks. */
const kicksTogether = 3;
/** Kicks a stroke of butterfly whose hands nothing speaks for. */
const kicksAStroke = 2;
/** Of a stroke whose hands aren't seen the kick's top is the first moment; a bottom before any top belongs to the first. */
const opens = (kind: EventKind): boolean => kind === 'kick-top';

type Moment = MarkedMoment & { readonly proposal: EventProposal | null };

/**
 * Proposals by stroke: from hand entry to hand entry where entries are marked or proposed; else so many kicks together. What is
 * accepted counts where strokes begin, so that groups keep their numbers while they are reviewed. Groups with nothing left
 * to decide are in it too. Ascending in time; empty of no moments.
 */
export function reviewGroups(
  proposals: readonly EventProposal[],
  marked: readonly MarkedMoment[],
  { stroke }: Pick<SwimCard, 'stroke'>,
): readonly ReviewGroup[] {
  const moments: readonly Moment[] = [
    ...marked.map((each) => ({ ...each, proposal: null })),
    ...proposals.map((proposal) => ({ kind: proposal.kind, time: proposal.time, proposal })),
  ].sort((a, b) => a.time - b.time);
  const entries = moments.flatMap(({ kind, time }) => (kind === 'entry' ? [time - kickLead] : []));
  const starts = entries.length > 0 ? entries : kickStarts(moments, stroke);
  const of = entries.length > 0 || stroke === 'butterfly' ? 'stroke' : 'kicks';
  const groups = new Map<number, Moment[]>();
  for (const moment of moments) {
    // what comes before the first start goes with it
    const at = Math.max(
      0,
      starts.findLastIndex((start) => start <= moment.time),
    );
    groups.set(at, [...(groups.get(at) ?? []), moment]);
  }
  return [...groups.values()].map((own, i) => ({
    number: i + 1,
    of,
    open: own.flatMap(({ proposal }) => proposal ?? []),
    accepted: own.filter(({ proposal }) => proposal === null).length,
  }));
}

function kickStarts(moments: readonly Moment[], stroke: SwimCard['stroke']): readonly number[] {
  const together = stroke === 'butterfly' ? kicksAStroke : kicksTogether;
  return moments
    .filter(({ kind }) => opens(kind))
    .flatMap(({ time }, i) => (i % together === 0 ? [time] : []));
}

/** The proposal that is known worst: less sure ones first, then by how far off it may be. Null of none. */
export function mostDoubtful(proposals: readonly EventProposal[]): EventProposal | null {
  return proposals.reduce<EventProposal | null>(
    (worst, each) =>
      worst &&
      (worst.unsure === each.unsure
        ? worst.sdSeconds >= each.sdSeconds
        : Number(worst.unsure) > Number(each.unsure))
        ? worst
        : each,
    null,
  );
}
