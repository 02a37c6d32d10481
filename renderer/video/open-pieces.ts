import type { FrameRange } from '#core/timeline/frame-range';
import type { Result } from '#core/host-contract/host-error';
import type { ClipFacts, FrameSource, ShownAs } from './frame-source';

/** Pieces open at one time: the one looked at and its neighbour. */
const openAtOnce = 2;
/** A piece's share of what pictures may take; what is beyond the pieces has the rest, so that all stay within one budget. */
const pieceShare = 5 / 16;

export interface OpenPiecesOptions {
  readonly facts: ClipFacts;
  readonly budgetBytes: number;
  readonly open: (piece: FrameRange, standsFor: ShownAs, budgetBytes: number) => Promise<Result<FrameSource>>;
  /** What the pieces leave of the budget is for what is beyond them. */
  readonly onRest: (bytes: number) => void;
}

/** The pieces of a growing copy that are open, within one budget of memory. */
export interface OpenPieces {
  /** Opens a piece, or has it from before; null where it can't be opened. */
  open(piece: FrameRange): Promise<FrameSource | null>;
  /** The source of a piece that is open by now. */
  ready(piece: FrameRange | null): FrameSource | null;
  shut(first: number): void;
  /** All sources open by now. */
  all(): readonly FrameSource[];
  budget(): number;
  limitTo(bytes: number): void;
  close(): void;
}

/** `distance`: of a piece, by its first frame, from where the coach goes; the farthest is closed first. */
export function createOpenPieces(
  { facts, budgetBytes, open, onRest }: OpenPiecesOptions,
  distance: (first: number) => number,
): OpenPieces {
  const opened = new Map<
    number,
    { readonly source: Promise<FrameSource | null>; ready: FrameSource | null }
  >();
  let budget = budgetBytes;
  let closed = false;

  /** Divides the budget among what is open, and what is about to be. */
  const share = (coming = 0): void => {
    const each = budget * pieceShare;
    for (const { ready } of opened.values()) if (ready?.memory().budgetBytes !== each) ready?.limitTo(each);
    onRest(budget - each * (opened.size + coming));
  };
  const shut = (first: number): void => {
    opened.get(first)?.ready?.close();
    opened.delete(first);
    share();
  };
  /** Pieces open that are more than may stay, the farthest from where the coach goes. */
  const tooFar = (staying: number): number[] =>
    [...opened.keys()].sort((a, b) => distance(a) - distance(b)).slice(staying);

  return {
    open(piece) {
      const known = opened.get(piece.first);
      if (known) return known.source;
      const { ticksPerSecond, starts, endTick } = facts.table;
      const table = {
        ticksPerSecond,
        starts: starts.slice(piece.first, piece.last + 1),
        endTick: starts[piece.last + 1] ?? endTick,
      };
      // room first, so that all that is open stays within the budget
      for (const first of tooFar(openAtOnce - 1)) shut(first);
      share(1);
      const shown = { width: facts.width, height: facts.height, table };
      const source = open(piece, shown, budget * pieceShare).then((result) => {
        if (!result.ok) return null;
        if (closed || opened.get(piece.first) !== entry) {
          result.value.close();
          return null;
        }
        entry.ready = result.value;
        return result.value;
      });
      const entry: { source: Promise<FrameSource | null>; ready: FrameSource | null } = {
        source,
        ready: null,
      };
      opened.set(piece.first, entry);
      return source;
    },
    ready: (piece) => (piece ? (opened.get(piece.first)?.ready ?? null) : null),
    shut,
    all: () => [...opened.values()].flatMap(({ ready }) => ready ?? []),
    budget: () => budget,
    limitTo(bytes) {
      budget = bytes;
      share();
    },
    close() {
      closed = true;
      for (const first of [...opened.keys()]) shut(first);
    },
  };
}
