import type { FrameRange } from '#core/timeline/frame-range';
import { openVideoFrames } from '../../../renderer/video/frame-ledger';
import type { ClipFacts, FrameSource } from '../../../renderer/video/frame-source';
import { openFrameSource } from '../../../renderer/video/open-frame-source';
import { createPlayer, type PlayPace } from '../../../renderer/video/player';
import { readClipFacts } from '../../../renderer/video/read-clip-facts';
import { framesLeftOpen, numberOf, numberOn, pairHarness } from './pair-page';
import { pictureCosts } from './picture-costs';
import { stillsOnStage } from './stills';
import { tasteClip } from './taste-clip';
import { openElement, seekElement } from './video-element';

/** What a walk saw: the number in each picture asked for and how long it took to be drawn, in milliseconds. */
export interface Seen {
  readonly frame: number;
  readonly number: number | null;
  readonly took: number;
}

export interface Played {
  readonly shown: readonly { readonly frame: number; readonly number: number | null; readonly at: number }[];
  readonly paused: number;
  /** Pictures that still appeared after the pause. */
  readonly later: number;
  readonly stopped: string | null;
}

const never = new AbortController().signal;
let source: FrameSource | null = null;
let canvas: OffscreenCanvas | HTMLCanvasElement = document.createElement('canvas');

/** Lets the window's other work be done first, as between two keys pressed: pictures come out of decoders, messages arrive. */
const nextTask = (): Promise<void> =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });

async function waitUntil(time: number): Promise<void> {
  const rest = time - performance.now();
  if (rest > 0) await new Promise((resolve) => setTimeout(resolve, rest));
  else await nextTask();
}

const harness = {
  async facts(address: string, asBlob = false): Promise<unknown> {
    const input = asBlob ? { blob: await (await fetch(address)).blob(), name: address } : { address };
    const facts = await readClipFacts(input, never);
    return facts;
  },

  taste: tasteClip,
  stillsOnStage,

  async open(address: string, budgetBytes?: number, standIn?: string): Promise<unknown> {
    source?.close();
    const clip = standIn === undefined ? null : await readClipFacts({ address }, never);
    if (clip && !clip.ok) return clip;
    const opened = await openFrameSource(
      { address: standIn ?? address },
      {
        signal: never,
        ...(budgetBytes === undefined ? {} : { budgetBytes }),
        ...(clip ? { standsFor: clip.value } : {}),
      },
    );
    if (!opened.ok) return opened;
    source = opened.value;
    const { facts } = source;
    canvas = document.createElement('canvas');
    canvas.width = Math.min(1280, facts.width);
    canvas.height = Math.round((canvas.width * facts.height) / facts.width);
    document.body.replaceChildren(canvas);
    return { ok: true, value: facts };
  },

  /** Shows frames one after another, drawing each at the size of a stage; `pace` is milliseconds a step, 0 unpaced. */
  async walk(
    frames: readonly number[],
    towards: -1 | 0 | 1,
    pace = 0,
    /** As the stage asks: half size will do while moving. */
    asStage = false,
  ): Promise<Seen[]> {
    if (!source) throw new Error('no clip open');
    const context = (canvas as HTMLCanvasElement).getContext('2d', { alpha: false });
    if (!context) throw new Error('no canvas');
    const seen: Seen[] = [];
    let due = performance.now();
    for (const frame of frames) {
      await waitUntil(due);
      const began = performance.now();
      due = Math.max(due, began - pace) + pace;
      const picture = await source.show(frame, towards, asStage ? () => undefined : undefined);
      picture.draw(context, 0, 0, canvas.width, canvas.height);
      const took = performance.now() - began;
      seen.push({ frame, number: picture.frame === frame ? numberOn(canvas) : null, took });
    }
    return seen;
  },

  /** A jump as the stage asks for it, with nothing held but the frame it starts from: what was fetched at rest is forgotten. */
  async jump(frame: number): Promise<Seen[]> {
    const { budgetBytes } = source?.memory() ?? { budgetBytes: 0 };
    source?.limitTo(0);
    source?.limitTo(budgetBytes);
    return harness.walk([frame], 0, 0, true);
  },

  /** Shows a frame as the stage does and rests there: whether it came whole, whether it was whole later, and its number then. */
  async rest(frame: number): Promise<{ first: boolean; later: boolean; number: number | null }> {
    if (!source) throw new Error('no clip open');
    const now = source;
    return new Promise((resolve, reject) => {
      now
        .show(frame, -1, (whole) => resolve({ first: false, later: whole.whole, number: numberOf(whole) }))
        .then((picture) => {
          if (picture.whole) resolve({ first: true, later: true, number: numberOf(picture) });
        }, reject);
    });
  },

  /** Asks as work that measures pictures does. */
  async wholeAtOnce(frames: readonly number[]): Promise<boolean[]> {
    const whole: boolean[] = [];
    for (const frame of frames) whole.push((await source?.show(frame, 0))?.whole === true);
    return whole;
  },

  /** Gives the source another budget; tells what it holds at once. */
  limitTo(bytes: number): number {
    source?.limitTo(bytes);
    return source?.memory().heldBytes ?? Number.NaN;
  },

  /** Asks for frames without waiting; tells how each request ended. */
  async hurry(frames: readonly number[]): Promise<string[]> {
    if (!source) throw new Error('no clip open');
    const now = source;
    const requests = frames.map((frame) =>
      now.show(frame, 0).then(
        (picture) => `shown ${numberOf(picture)}`,
        (problem: unknown) =>
          problem instanceof Error || problem instanceof DOMException ? problem.name : 'other',
      ),
    );
    return Promise.all(requests);
  },

  /** Whether every frame so far to both sides of one is held. */
  holdsAround(frame: number, reach: number): boolean {
    const last = (source?.facts.table.starts.length ?? 0) - 1;
    for (let each = Math.max(0, frame - reach); each <= Math.min(last, frame + reach); each++)
      if (!source?.held(each)) return false;
    return true;
  },

  pictureCosts,
  memory: () => source?.memory() ?? null,
  openFrames: () => openVideoFrames(),

  async close(): Promise<number> {
    source?.close();
    source = null;
    return framesLeftOpen();
  },

  /** The middle fifth of pictures as 48 × 48 grey values. */
  async fingerprints(frames: readonly number[]): Promise<{ frame: number; print: number[] }[]> {
    if (!source) throw new Error('no clip open');
    const context = new OffscreenCanvas(48, 48).getContext('2d', { willReadFrequently: true });
    if (!context) throw new Error('no canvas');
    context.imageSmoothingQuality = 'high';
    const prints: { frame: number; print: number[] }[] = [];
    for (const frame of frames) {
      (await source.show(frame, 0)).draw(context, -96, -96, 240, 240);
      const { data } = context.getImageData(0, 0, 48, 48);
      const grey = (n: number): number =>
        0.2126 * (data[n] ?? 0) + 0.7152 * (data[n + 1] ?? 0) + 0.0722 * (data[n + 2] ?? 0);
      prints.push({ frame, print: Array.from({ length: 48 * 48 }, (_, n) => grey(n * 4)) });
    }
    return prints;
  },

  /** Plays for a while, then pauses; tells what was on screen when, and what the pause landed on. */
  async play(plan: {
    readonly from: number;
    readonly pace: PlayPace;
    readonly slowdown: number;
    /** Until so many pictures were shown, the loop came round so often, or playing stopped by itself. */
    readonly until: { readonly pictures: number } | { readonly rounds: number } | 'the end';
    readonly loop?: FrameRange;
  }): Promise<Played> {
    if (!source) throw new Error('no clip open');
    const shown: { frame: number; number: number | null; at: number }[] = [];
    let stopped: string | null = null;
    const { until } = plan;
    const done = (): boolean => {
      if (stopped !== null) return true;
      if (until === 'the end') return false;
      if ('pictures' in until) return shown.length >= until.pictures;
      return shown.filter(({ frame }, n) => frame < (shown[n - 1]?.frame ?? 0)).length >= until.rounds;
    };
    let isEnough: () => void = () => undefined;
    const enough = new Promise<void>((resolve) => {
      isEnough = resolve;
    });
    const player = createPlayer({
      source,
      slowdown: plan.slowdown,
      onFrame: (picture) => {
        // the clock first: reading the number takes its time
        const at = performance.now();
        shown.push({ frame: picture.frame, number: numberOf(picture), at });
        if (done()) isEnough();
      },
      onStop: (reason, frame) => {
        stopped = `${reason} at ${frame}`;
        isEnough();
      },
    });
    player.play(plan.from, plan.pace, plan.loop);
    await enough;
    const paused = player.pause();
    const then = shown.length;
    await new Promise((resolve) => setTimeout(resolve, 150));
    player.close();
    return { shown, paused, later: shown.length - then, stopped };
  },

  openElement,
  seekElement,
  ...pairHarness,
};

export type Harness = typeof harness;
export type { ClipFacts };

declare global {
  interface Window {
    harness: Harness;
  }
}
window.harness = harness;
