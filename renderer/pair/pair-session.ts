import type { FrameRange } from '#core/timeline/frame-range';
import { createContext, useContext, useMemo } from 'react';
import { useStore } from 'zustand';
import type { PairSide } from '#core/compare/pair-clock';
import type { Lock } from '#core/compare/pair-lock';
import { type PairPart, pairPartOf } from '#core/compare/pair-part';
import type { Swim } from '#core/swim-file/swim-schema';
import { type OpenSwim, clockOf } from '../open-swim/open-swim';
import type { HostClient } from '../host/host-client';
import type { Known } from '../open-swim/readings-store';
import type { Each, PairView, PairViewStore, Which } from './pair-view';
import { keptWith } from '#core/units/kept-with';

/** Everything the parts of the pair share while two swims are open. Each swim has a session as on the bench. */
export interface PairSession {
  readonly host: HostClient;
  readonly swims: Each<OpenSwim>;
  readonly view: PairViewStore;
  readonly say: (words: string) => void;
}

export const PairContext = createContext<PairSession | null>(null);

export function usePair(): PairSession {
  const session = useContext(PairContext);
  if (!session) throw new Error('this part belongs inside an open pair');
  return session;
}

export function usePairView<T>(select: (state: PairView) => T): T {
  return useStore(usePair().view, select);
}

interface Asked {
  readonly swim: Swim;
  readonly known: Known;
  readonly stretch: FrameRange;
  readonly lock: Lock;
}

const kept = keptWith((_: PairSession): (readonly [Asked, PairPart] | null)[] => [null, null]);

/** A swim's part of the pair; the same object until something it is made of changes. */
export function pairPart(session: PairSession, which: Which): PairPart {
  const { locks, stretches } = session.view.getState();
  const bench = session.swims[which];
  const asked: Asked = {
    swim: bench.document.swim(),
    known: bench.known.getState(),
    stretch: stretches[which],
    lock: locks[which],
  };
  const parts = kept(session);
  const found = parts[which];
  if (found && (Object.keys(asked) as (keyof Asked)[]).every((key) => found[0][key] === asked[key]))
    return found[1];
  const made = pairPartOf(asked.swim, asked.known, clockOf(asked.swim), asked.stretch, asked.lock);
  parts[which] = [asked, made];
  return made;
}

export function pairSides(session: PairSession): Each<PairSide> {
  return [pairPart(session, 0).side, pairPart(session, 1).side];
}

export function pairFrames(session: PairSession): Each<number> {
  return [session.swims[0].view.getState().frame, session.swims[1].view.getState().frame];
}

/** A swim's part, followed as marks, stretch and lock change. */
export function usePairPart(which: Which): PairPart {
  const session = usePair();
  const bench = session.swims[which];
  const swim = useStore(bench.document.store, (state) => state.swim);
  const known = useStore(bench.known);
  const stretch = usePairView((state) => state.stretches[which]);
  const lock = usePairView((state) => state.locks[which]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: these are what the part is made of
  return useMemo(() => pairPart(session, which), [session, which, swim, known, stretch, lock]);
}
