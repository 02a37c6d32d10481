import type { PairSide } from '#core/compare/pair-clock';
import { followFrame } from '#core/compare/pair-run';
import { createPairPlayer } from '../../../renderer/pair/pair-player';
import { openVideoFrames } from '../../../renderer/video/frame-ledger';
import type { FramePicture, FrameSource } from '../../../renderer/video/frame-source';
import { openFrameSource, pictureBudget } from '../../../renderer/video/open-frame-source';
import { readCode } from './picture-code';

/** What both stages showed: the frames asked for and the numbers in their pictures. */
export interface SeenTogether {
  readonly frames: readonly number[];
  readonly numbers: readonly (number | null)[];
  readonly at: number;
}

let sources: FrameSource[] = [];
let sides: PairSide[] = [];

const reader = new OffscreenCanvas(640, 360).getContext('2d', { willReadFrequently: true });

export function numberOf(picture: FramePicture): number | null {
  return readNumber((context) => picture.draw(context, 0, 0, 640, 360));
}

/** The number in what has been drawn on a canvas. */
export function numberOn(canvas: CanvasImageSource): number | null {
  return readNumber((context) => context.drawImage(canvas, 0, 0, 640, 360));
}

function readNumber(draw: (context: OffscreenCanvasRenderingContext2D) => void): number | null {
  if (!reader) throw new Error('no canvas');
  reader.clearRect(0, 0, 640, 360);
  draw(reader);
  return readCode(reader.getImageData(0, 0, 640, 360).data, 640, 360);
}

function seen(frames: readonly number[]): SeenTogether {
  // the clock first: reading the numbers takes its time
  const at = performance.now();
  const numbers = frames.map((frame, index) => {
    const picture = sources[index]?.held(frame);
    return picture ? numberOf(picture) : null;
  });
  return { frames, numbers, at };
}

/** Decoder pictures that are still open when those on their way had time to be closed; 0 is what is wanted. */
export async function framesLeftOpen(): Promise<number> {
  const end = performance.now() + 5000;
  // none open once may be one before it comes: twice none, a moment apart
  for (let none = 0; none < 2 && performance.now() < end; none = openVideoFrames() === 0 ? none + 1 : 0)
    await new Promise((resolve) => setTimeout(resolve, 50));
  return openVideoFrames();
}

export const pairHarness = {
  /** Opens two clips as the pair does, each with half the budget, locked at real times. */
  async openPair(addresses: readonly string[], locks: readonly number[]): Promise<void> {
    for (const source of sources) source.close();
    sources = [];
    for (const address of addresses) {
      const opened = await openFrameSource(
        { address },
        { signal: new AbortController().signal, budgetBytes: pictureBudget / 2 },
      );
      if (!opened.ok) throw new Error(JSON.stringify(opened.error));
      sources.push(opened.value);
    }
    sides = sources.map(({ facts: { table } }, index) => ({
      clock: { table, slowdown: 1 },
      first: 0,
      last: table.starts.length - 1,
      lockTime: locks[index] ?? 0,
      cycleStarts: [],
    }));
  },

  /** Steps one clip to frames in turn; the other follows by the pair's own rule. */
  async walkPair(lead: number, to: readonly number[]): Promise<SeenTogether[]> {
    const walked: SeenTogether[] = [];
    let frames: readonly number[] = sides.map(({ first }) => first);
    for (const frame of to) {
      const before = frames;
      const asked = before.map((each, index) => (index === lead ? frame : each));
      frames = followFrame(sides, 'time', { frames: asked, lead });
      await Promise.all(
        frames.map((each, index) =>
          sources[index]?.show(each, Math.sign(each - (before[index] ?? 0)) as -1 | 0 | 1),
        ),
      );
      walked.push(seen(frames));
    }
    return walked;
  },

  /** Plays both together until so many moments were shown. */
  async playPair(from: readonly number[], pace: number, moments: number): Promise<SeenTogether[]> {
    const played: SeenTogether[] = [];
    let isEnough: () => void = () => undefined;
    const enough = new Promise<void>((resolve) => {
      isEnough = resolve;
    });
    const player = createPairPlayer({
      sides,
      mode: 'time',
      standing: { frames: from, lead: 0 },
      sources,
      pace,
      onFrames: (frames) => {
        played.push(seen(frames));
        if (played.length >= moments) isEnough();
      },
      onStop: () => isEnough(),
    });
    await enough;
    player.close();
    return played;
  },

  pairMemory: () => sources.map((source) => source.memory()),

  async closePair(): Promise<void> {
    for (const source of sources) source.close();
    sources = [];
    await framesLeftOpen();
  },
};
