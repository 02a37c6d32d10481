import { openVideoFrames } from '../../../renderer/video/frame-ledger';
import type { ClipFacts, FramePicture, FrameSource } from '../../../renderer/video/frame-source';
import { openFrameSource } from '../../../renderer/video/open-frame-source';
import { readClipFacts } from '../../../renderer/video/read-clip-facts';
import { readCode } from './picture-code';
import { seekElement, openElement } from './video-element';

/** What a walk saw: the number in each picture asked for and how long it took to be drawn, in milliseconds. */
export interface Seen {
  readonly frame: number;
  readonly number: number | null;
  readonly took: number;
}

const never = new AbortController().signal;
let source: FrameSource | null = null;
let canvas: OffscreenCanvas | HTMLCanvasElement = document.createElement('canvas');

function numberOf(picture: FramePicture): number | null {
  const reader = new OffscreenCanvas(640, 360);
  const context = reader.getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('no canvas');
  picture.draw(context, 0, 0, 640, 360);
  return readCode(context.getImageData(0, 0, 640, 360).data, 640, 360);
}

async function waitUntil(time: number): Promise<void> {
  const rest = time - performance.now();
  if (rest > 0) await new Promise((resolve) => setTimeout(resolve, rest));
}

const harness = {
  async facts(address: string, asBlob = false): Promise<unknown> {
    const input = asBlob ? { blob: await (await fetch(address)).blob(), name: address } : { address };
    const facts = await readClipFacts(input, never);
    return facts;
  },

  async open(address: string, budgetBytes?: number): Promise<unknown> {
    source?.close();
    const opened = await openFrameSource(
      { address },
      budgetBytes === undefined ? { signal: never } : { signal: never, budgetBytes },
    );
    if (!opened.ok) return opened;
    source = opened.value;
    const { facts } = source;
    canvas = document.createElement('canvas');
    canvas.width = Math.min(1280, facts.width);
    canvas.height = Math.round((canvas.width * facts.height) / facts.width);
    document.body.replaceChildren(canvas);
    return opened.value.facts;
  },

  /** Shows frames one after another, drawing each at the size of a stage; `pace` is milliseconds a step, 0 unpaced. */
  async walk(frames: readonly number[], towards: -1 | 0 | 1, pace = 0): Promise<Seen[]> {
    if (!source) throw new Error('no clip open');
    const context = (canvas as HTMLCanvasElement).getContext('2d', { alpha: false });
    if (!context) throw new Error('no canvas');
    const seen: Seen[] = [];
    let due = performance.now();
    for (const frame of frames) {
      await waitUntil(due);
      const began = performance.now();
      due = Math.max(due, began - pace) + pace;
      const picture = await source.show(frame, towards);
      picture.draw(context, 0, 0, canvas.width, canvas.height);
      const took = performance.now() - began;
      seen.push({ frame, number: picture.frame === frame ? numberOf(picture) : null, took });
    }
    return seen;
  },

  /** Asks for frames without waiting; tells how each wish ended. */
  async hurry(frames: readonly number[]): Promise<string[]> {
    if (!source) throw new Error('no clip open');
    const now = source;
    const wishes = frames.map((frame) =>
      now.show(frame, 0).then(
        (picture) => `shown ${numberOf(picture)}`,
        (problem: unknown) =>
          problem instanceof Error || problem instanceof DOMException ? problem.name : 'other',
      ),
    );
    return Promise.all(wishes);
  },

  memory: () => source?.memory() ?? null,
  openFrames: () => openVideoFrames(),

  async close(): Promise<number> {
    source?.close();
    source = null;
    await new Promise((resolve) => setTimeout(resolve, 200));
    return openVideoFrames();
  },

  /** Average colour at points of the shown picture (fractions of its size). */
  async colours(frame: number, points: readonly (readonly [number, number])[]): Promise<number[][]> {
    if (!source) throw new Error('no clip open');
    const picture = await source.show(frame, 0);
    const reader = new OffscreenCanvas(picture.width, picture.height);
    const context = reader.getContext('2d', { willReadFrequently: true });
    if (!context) throw new Error('no canvas');
    picture.draw(context, 0, 0, picture.width, picture.height);
    return points.map(([x, y]) => [
      ...context
        .getImageData(Math.round(x * picture.width), Math.round(y * picture.height), 1, 1)
        .data.slice(0, 3),
    ]);
  },

  openElement,
  seekElement,
};

export type Harness = typeof harness;
export type { ClipFacts };
declare global {
  interface Window {
    harness: Harness;
  }
}
window.harness = harness;
