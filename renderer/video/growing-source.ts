import type { Result } from '#core/host-contract/host-error';
import type { Stretch } from '#core/host-contract/operations/media-operations';
import { clampFrame } from '#core/timeline/frame-table';
import type { FramePicture, FrameSource, ShownAs } from './frame-source';

export interface GrowingOptions {
  /** Where frames come from that no piece has yet; closed with this. */
  readonly beyond: FrameSource;
  /** Opens a piece of the copy within a budget; its frames count from 0. */
  readonly open: (piece: Stretch, standsFor: ShownAs, budgetBytes: number) => Promise<Result<FrameSource>>;
}

/** A working copy that is still being made: quick where pieces of it are there, from elsewhere where they aren't. */
export interface GrowingSource extends FrameSource {
  /** The pieces that can be shown now. */
  grow(pieces: readonly Stretch[]): void;
  /** Whether a frame's picture comes from a piece. */
  covers(frame: number): boolean;
}

/** Pieces open at one time: the one looked at and its neighbour. */
const openAtOnce = 2;
/** A piece's share of what pictures may take; what is beyond the pieces has the rest, so that all stay within one budget. */
const pieceShare = 5 / 16;
/** A neighbour is opened when the coach is this near to it. */
const nearTheEdge = 48;

export function createGrowingSource({ beyond, open }: GrowingOptions): GrowingSource {
  const { facts } = beyond;
  const opened = new Map<
    number,
    { readonly source: Promise<FrameSource | null>; ready: FrameSource | null }
  >();
  let budget = beyond.memory().budgetBytes;
  let pieces: readonly Stretch[] = [];
  let playhead = 0;
  /** Somewhat ahead of the playhead: of two neighbours the one the coach goes to is nearer. */
  let aim = 0;
  let wish: Wish | null = null;
  let closed = false;

  const pieceOf = (frame: number): Stretch | null =>
    pieces.find(({ first, last }) => frame >= first && frame <= last) ?? null;

  const openPiece = (piece: Stretch): Promise<FrameSource | null> => {
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
    const entry: { source: Promise<FrameSource | null>; ready: FrameSource | null } = { source, ready: null };
    opened.set(piece.first, entry);
    return source;
  };
  /** Pieces open that are more than may stay, the farthest from where the coach goes. */
  const tooFar = (staying: number): number[] =>
    [...opened.keys()].sort((a, b) => distance(a) - distance(b)).slice(staying);
  const distance = (first: number): number => {
    const piece = pieces.find((each) => each.first === first);
    return piece ? Math.max(0, piece.first - aim, aim - piece.last) : Number.POSITIVE_INFINITY;
  };
  const shut = (first: number): void => {
    opened.get(first)?.ready?.close();
    opened.delete(first);
    share();
  };
  /** Divides the budget among what is open, and what is about to be. */
  const share = (coming = 0): void => {
    const each = budget * pieceShare;
    for (const { ready } of opened.values()) if (ready?.memory().budgetBytes !== each) ready?.limitTo(each);
    beyond.limitTo(budget - each * (opened.size + coming));
  };

  const serve = async (wanted: Wish): Promise<void> => {
    const piece = pieceOf(wanted.frame);
    const source = piece ? await openPiece(piece) : null;
    if (wish !== wanted) return;
    if (piece && source) {
      try {
        const { frame, towards, whenWhole } = wanted;
        const whole = whenWhole
          ? (picture: FramePicture) => whenWhole(moved(picture, piece.first))
          : undefined;
        const picture = await source.show(frame - piece.first, towards, whole);
        settle(wanted, ({ resolve }) => resolve(moved(picture, piece.first)));
        return;
      } catch {
        // taken away once the whole copy is there, or damaged: what is beyond the pieces has every frame
        if (wish !== wanted) return;
        shut(piece.first);
      }
    }
    // what could not be opened is not tried again before it is told of anew
    if (piece) pieces = pieces.filter(({ first }) => first !== piece.first);
    wanted.beyond = true;
    beyond.show(wanted.frame, wanted.towards, wanted.whenWhole).then(
      (picture) => settle(wanted, ({ resolve }) => resolve(picture)),
      (problem: unknown) => settle(wanted, ({ reject }) => reject(problem)),
    );
  };
  const settle = (wanted: Wish, end: (settled: Wish) => void): void => {
    if (wish !== wanted) return;
    wish = null;
    end(wanted);
  };
  const supersede = (reason: string): void => {
    const older = wish;
    wish = null;
    older?.reject(new DOMException(reason, 'AbortError'));
  };
  const openNeighbour = (towards: -1 | 0 | 1): void => {
    const next = pieceOf(playhead + towards * nearTheEdge);
    if (next) void openPiece(next);
  };

  return {
    facts,
    get resolution() {
      const piece = pieceOf(playhead);
      return (piece && opened.get(piece.first)?.ready?.resolution) ?? beyond.resolution;
    },
    held(frame) {
      const piece = pieceOf(frame);
      const picture = piece ? opened.get(piece.first)?.ready?.held(frame - piece.first) : null;
      return picture && piece ? moved(picture, piece.first) : beyond.held(frame);
    },
    show(frame, towards, whenWhole) {
      supersede('A newer frame was asked for');
      if (closed) return Promise.reject(new DOMException('The clip is closed', 'AbortError'));
      playhead = clampFrame(facts.table, frame);
      aim = playhead + (towards * nearTheEdge) / 2;
      return new Promise((resolve, reject) => {
        const wanted: Wish = { frame: playhead, towards, whenWhole, beyond: false, resolve, reject };
        wish = wanted;
        void serve(wanted);
        openNeighbour(towards);
      });
    },
    grow(now) {
      if (closed) return;
      pieces = now;
      const piece = pieceOf(playhead);
      if (!piece) return;
      void openPiece(piece);
      // what was asked for elsewhere may come sooner from here
      if (wish?.beyond) void serve(wish);
    },
    covers: (frame) => pieceOf(frame) !== null,
    memory() {
      const all = [beyond, ...[...opened.values()].flatMap(({ ready }) => ready ?? [])].map((each) =>
        each.memory(),
      );
      const sum = (of: (memory: ReturnType<FrameSource['memory']>) => number): number =>
        all.reduce((total, each) => total + of(each), 0);
      return {
        heldBytes: sum(({ heldBytes }) => heldBytes),
        budgetBytes: budget,
        pictures: sum(({ pictures }) => pictures),
      };
    },
    limitTo(bytes) {
      budget = bytes;
      share();
    },
    close() {
      closed = true;
      supersede('The clip is closed');
      for (const first of [...opened.keys()]) shut(first);
      beyond.close();
    },
  };
}

interface Wish {
  readonly frame: number;
  readonly towards: -1 | 0 | 1;
  readonly whenWhole: ((picture: FramePicture) => void) | undefined;
  /** It was asked for beyond the pieces. */
  beyond: boolean;
  resolve(picture: FramePicture): void;
  reject(reason: unknown): void;
}

/** A piece's picture under the number of the whole film's frame. */
const moved = (picture: FramePicture, first: number): FramePicture => ({
  ...picture,
  frame: picture.frame + first,
});
