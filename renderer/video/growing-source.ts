import type { FrameRange } from '#core/timeline/frame-range';
import type { Result } from '#core/host-contract/host-error';
import { clampFrame } from '#core/timeline/frame-table';
import { createOpenPieces, type OpenPieces } from './open-pieces';
import type { FramePicture, FrameSource, ShownAs } from './frame-source';

export interface GrowingOptions {
  /** Where frames come from that no piece has yet; closed with this. */
  readonly beyond: FrameSource;
  /** Opens a piece of the copy within a budget; its frames count from 0. */
  readonly open: (piece: FrameRange, standsFor: ShownAs, budgetBytes: number) => Promise<Result<FrameSource>>;
}

/** A working copy that is still being made: quick where pieces of it are there, from elsewhere where they aren't. */
export interface GrowingSource extends FrameSource {
  /** The pieces that can be shown now. */
  grow(pieces: readonly FrameRange[]): void;
  /** Whether a frame's picture comes from a piece. */
  covers(frame: number): boolean;
}

/** A neighbour is opened when the coach is this near to it. */
const nearTheEdge = 48;

export function createGrowingSource({ beyond, open }: GrowingOptions): GrowingSource {
  const { facts } = beyond;
  let pieces: readonly FrameRange[] = [];
  let playhead = 0;
  /** Somewhat ahead of the playhead: of two neighbours the one the coach goes to is nearer. */
  let aim = 0;
  let request: Request | null = null;
  let closed = false;

  const pieceOf = (frame: number): FrameRange | null =>
    pieces.find(({ first, last }) => frame >= first && frame <= last) ?? null;

  const distance = (first: number): number =>
    distanceOf(
      pieces.find((each) => each.first === first),
      aim,
    );
  const opened = createOpenPieces(
    { facts, open, budgetBytes: beyond.memory().budgetBytes, onRest: (bytes) => beyond.limitTo(bytes) },
    distance,
  );

  const serve = async (wanted: Request): Promise<void> => {
    const piece = pieceOf(wanted.frame);
    const source = piece ? await opened.open(piece) : null;
    if (request !== wanted) return;
    if (piece && source) {
      try {
        const picture = await showFrom(source, wanted, piece.first);
        settle(wanted, ({ resolve }) => resolve(picture));
        return;
      } catch {
        // taken away once the whole copy is there, or damaged: what is beyond the pieces has every frame
        if (request !== wanted) return;
        opened.shut(piece.first);
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
  const settle = (wanted: Request, end: (settled: Request) => void): void => {
    if (request !== wanted) return;
    request = null;
    end(wanted);
  };
  const supersede = (reason: string): void => {
    const older = request;
    request = null;
    older?.reject(new DOMException(reason, 'AbortError'));
  };

  return {
    facts,
    get resolution() {
      const piece = pieceOf(playhead);
      return opened.ready(piece)?.resolution ?? beyond.resolution;
    },
    held: (frame) => heldIn(opened, pieceOf(frame), frame) ?? beyond.held(frame),
    show(frame, towards, whenWhole) {
      supersede('A newer frame was asked for');
      if (closed) return Promise.reject(new DOMException('The clip is closed', 'AbortError'));
      playhead = clampFrame(facts.table, frame);
      aim = playhead + (towards * nearTheEdge) / 2;
      return new Promise((resolve, reject) => {
        const wanted: Request = { frame: playhead, towards, whenWhole, beyond: false, resolve, reject };
        request = wanted;
        void serve(wanted);
        const neighbour = pieceOf(playhead + towards * nearTheEdge);
        if (neighbour) void opened.open(neighbour);
      });
    },
    grow(now) {
      if (closed) return;
      pieces = now;
      const piece = pieceOf(playhead);
      if (!piece) return;
      void opened.open(piece);
      // what was asked for elsewhere may come sooner from here
      if (request?.beyond) void serve(request);
    },
    covers: (frame) => pieceOf(frame) !== null,
    memory() {
      return memoryOf([beyond, ...opened.all()], opened.budget());
    },
    limitTo: opened.limitTo,
    close() {
      closed = true;
      supersede('The clip is closed');
      opened.close();
      beyond.close();
    },
  };
}

interface Request {
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

/** A frame of the whole film, from the piece that begins at `first`. */
async function showFrom(
  source: FrameSource,
  { frame, towards, whenWhole }: Request,
  first: number,
): Promise<FramePicture> {
  const whole = whenWhole ? (picture: FramePicture) => whenWhole(moved(picture, first)) : undefined;
  return moved(await source.show(frame - first, towards, whole), first);
}

function memoryOf(sources: readonly FrameSource[], budgetBytes: number): ReturnType<FrameSource['memory']> {
  const all = sources.map((each) => each.memory());
  return {
    heldBytes: all.reduce((sum, each) => sum + each.heldBytes, 0),
    budgetBytes,
    pictures: all.reduce((sum, each) => sum + each.pictures, 0),
  };
}

/** A frame that a piece has decoded, under the number of the whole film's frame. */
function heldIn(opened: OpenPieces, piece: FrameRange | null, frame: number): FramePicture | null {
  const picture = piece && opened.ready(piece)?.held(frame - piece.first);
  return picture && piece ? moved(picture, piece.first) : null;
}

/** How far a piece lies from a frame; one that is no more, farthest of all. */
const distanceOf = (piece: FrameRange | undefined, frame: number): number =>
  piece ? Math.max(0, piece.first - frame, frame - piece.last) : Number.POSITIVE_INFINITY;
