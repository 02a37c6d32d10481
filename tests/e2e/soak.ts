import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { type CDPSession, chromium, type Page } from '@playwright/test';
import { parseSwim, serialiseSwim } from '#core/swim-file/swim-file';
import { chromiumOptions } from '../browser/harness/chromium';
import { type HeapKinds, heapKinds } from './heap-kinds';
import { lookAtProcess } from './process-look';
import { makeLibrary, startApp } from './started-app';

/** What window and host hold, taken on the shelf after a round of review, with what can be collected collected. */
export interface SoakSample {
  readonly seconds: number;
  readonly round: number;
  readonly heapMb: number;
  readonly nodes: number;
  readonly listeners: number;
  /** Decoder pictures that were made and not closed. */
  readonly openFrames: number;
  readonly workers: number;
  /** What the heap holds, by kind; looked at every few rounds only. */
  readonly kinds: HeapKinds | null;
  readonly hostMb: number;
  readonly hostHandles: number;
}

export interface SoakAsk {
  readonly seconds?: number;
  readonly actions?: number;
  readonly followEvery: number;
  /**
   * Look at all of the heap after so many rounds. A multiple of the rounds after which the same swim is reviewed in the same
   * way again: the last one reviewed is still held by the screen's former state, and swims differ in size.
   */
  readonly kindsEvery?: number;
}

export interface Soak {
  readonly samples: readonly SoakSample[];
  /** Keys pressed, buttons clicked and screens opened. */
  readonly actions: number;
  /** Bugs the window met; empty is what is wanted. */
  readonly bugs: readonly string[];
}

const swims = [
  'sample-butterfly-together',
  'sample-arms-folded',
  'sample-phone-portrait',
  'sample-kick-on-back',
];
const followed = 'sample-streamline-kick';
const screens = [
  '#/pair/sample-butterfly-together/sample-butterfly-late-kick',
  '#/trials',
  '#/sets',
  '#/season/pip',
];

/** Counts the pictures a page is given and has not closed. A set holds them, so that no collector closes them unseen. */
function countFrames(): void {
  const open = new Set<VideoFrame>();
  const Decoder = VideoDecoder;
  const close = VideoFrame.prototype.close;
  VideoFrame.prototype.close = function closeCounted(this: VideoFrame) {
    open.delete(this);
    close.call(this);
  };
  const Frame = VideoFrame;
  window.VideoFrame = new Proxy(Frame, {
    construct(of, given) {
      const frame = Reflect.construct(of, given) as VideoFrame;
      open.add(frame);
      return frame;
    },
  });
  window.VideoDecoder = new Proxy(Decoder, {
    construct(of, [init]: [VideoDecoderInit]) {
      const output = (frame: VideoFrame): void => {
        open.add(frame);
        init.output(frame);
      };
      return Reflect.construct(of, [{ ...init, output }]) as VideoDecoder;
    },
  });
  Object.assign(window, { openFrameCount: () => open.size });
}

let actions = 0;
const press = (page: Page, key: string): Promise<void> => {
  actions += 1;
  return page.locator('body').press(key);
};

async function go(page: Page, address: string): Promise<void> {
  actions += 1;
  await page.evaluate((hash) => {
    window.location.hash = hash;
  }, address);
  if (address.includes('/bench/') || address.includes('/pair/')) {
    await page.locator('.where').first().waitFor();
    await page.locator('.stage[data-shown-frame]:not([data-shown-frame=""])').first().waitFor();
  } else await page.locator('h1, [role="heading"]').first().waitFor();
}

/** Step, mark, undo, play, jump by events, look closer. */
async function review(page: Page, swim: string): Promise<void> {
  await go(page, `#/bench/${swim}`);
  for (const [key, times] of [
    ['ArrowRight', 25],
    ['ArrowLeft', 10],
    ['Shift+ArrowRight', 5],
  ] as const)
    for (let n = 0; n < times; n++) await press(page, key);
  let made = 0;
  for (const key of ['q', 'w', 'a', 's', 'e', 'r']) {
    await press(page, 'ArrowRight');
    await press(page, key);
    made += 1;
  }
  for (let n = 0; n < made; n++) await press(page, 'Control+z');
  for (const key of ['.', '.', ',']) await press(page, key);
  const from = await page.locator('.where').first().getAttribute('data-frame');
  await press(page, ' ');
  // until some dozen pictures were played
  await page.waitForFunction(
    (began) => Number(document.querySelector('.where')?.getAttribute('data-frame')) >= Number(began) + 15,
    from,
    { timeout: 30_000 },
  );
  await press(page, ' ');
}

async function saveStill(page: Page): Promise<void> {
  await press(page, 'i');
  const dialog = page.getByRole('dialog');
  actions += 1;
  await dialog.getByRole('button', { name: /save/i }).click();
  await dialog.getByText(/saved/i).first().waitFor();
  await press(page, 'Escape');
  await dialog.waitFor({ state: 'detached' }).catch(() => press(page, 'Escape'));
}

/** Follows points between body lines, and takes it back. */
async function follow(page: Page): Promise<void> {
  await go(page, `#/bench/${followed}`);
  await press(page, 'o');
  const panel = page.getByRole('complementary', { name: 'Follow and propose' });
  await panel.getByText('Every stretch between body lines is followed.').waitFor({ timeout: 120_000 });
  await press(page, 'Control+z');
}

/** Leaves the kick sample few body lines in its first third, so that a round of following is short. */
function thin(library: string): void {
  const file = path.join(library, 'swims', followed, 'swim.json');
  const parsed = parseSwim(readFileSync(file, 'utf8'));
  if (!parsed.ok) throw new Error(parsed.fault.code);
  const postures = parsed.value.postures.filter(({ frame }) => frame % 12 === 0 && frame <= 36);
  writeFileSync(file, serialiseSwim({ ...parsed.value, postures, events: [] }));
}

async function sample(
  page: Page,
  session: CDPSession,
  pid: number,
): Promise<Omit<SoakSample, 'seconds' | 'round' | 'kinds'>> {
  // pictures are closed a moment after their screen; one that never is stays in the count below
  await page
    .waitForFunction(() => (window as unknown as { openFrameCount(): number }).openFrameCount() === 0, null, {
      timeout: 10_000,
    })
    .catch((error: unknown) => {
      if (!(error instanceof Error && error.name === 'TimeoutError')) throw error;
    });
  await page.waitForTimeout(300);
  await session.send('HeapProfiler.collectGarbage');
  const [{ nodes, jsEventListeners }, { metrics }, openFrames] = await Promise.all([
    session.send('Memory.getDOMCounters'),
    session.send('Performance.getMetrics'),
    page.evaluate(() => (window as unknown as { openFrameCount(): number }).openFrameCount()),
  ]);
  const host = lookAtProcess(pid);
  return {
    ...{ nodes, openFrames, listeners: jsEventListeners },
    heapMb: (metrics.find(({ name }) => name === 'JSHeapUsedSize')?.value ?? 0) / 2 ** 20,
    workers: page.workers().length,
    hostMb: host?.residentMb ?? 0,
    hostHandles: host?.handles ?? 0,
  };
}

/**
 * Scripted review of the sample swims in a real browser against the real host, round after round: stepping, marking, undo,
 * playing, stills, every screen, and following each `followEvery` rounds. A sample is taken after each round; it ends with
 * the round in which both the seconds and the actions asked for are reached.
 */
export async function runSoak(
  { seconds = 0, actions: atLeast = 0, followEvery, kindsEvery = Number.POSITIVE_INFINITY }: SoakAsk,
  tell: (sample: SoakSample) => void = () => undefined,
): Promise<Soak> {
  const { library, remove } = await makeLibrary(true);
  const app = await startApp(library);
  const browser = await chromium.launch(chromiumOptions());
  const bugs: string[] = [];
  const samples: SoakSample[] = [];
  try {
    thin(library);
    const page = await browser.newPage();
    page.on('pageerror', (error) => bugs.push(error.stack ?? error.message));
    // the runner's compiler names functions through a helper that the page does not have
    await page.addInitScript('window.__name = (each) => each');
    await page.addInitScript(countFrames);
    const session = await page.context().newCDPSession(page);
    await session.send('Performance.enable');
    await page.goto(app.address);
    await page.locator('.swim-tile-open').first().waitFor();
    const began = Date.now();
    actions = 0;
    for (let round = 0; actions < atLeast || Date.now() - began < seconds * 1000; round++) {
      const swim = swims[round % swims.length] ?? followed;
      await review(page, swim);
      await saveStill(page);
      if (round % followEvery === followEvery - 1) await follow(page);
      for (const address of [...screens, `#/handout/${swim}`, '#/library']) await go(page, address);
      await go(page, '#/');
      await page.locator('.swim-tile-open').first().waitFor();
      const taken = {
        ...{ seconds: Math.round((Date.now() - began) / 1000), round },
        ...(await sample(page, session, app.pid)),
        kinds: (round + 1) % kindsEvery === 0 ? await heapKinds(session) : null,
      };
      samples.push(taken);
      tell(taken);
    }
  } finally {
    await browser.close();
    await app.stop();
    await remove();
  }
  return { samples, actions, bugs };
}
