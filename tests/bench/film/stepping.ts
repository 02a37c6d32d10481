import { readFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { chromium, type Page } from '@playwright/test';
import { findMediaTool } from '#electron/media/find-media-tool';
import { chromiumOptions } from '../../browser/harness/chromium';
import type { Seen } from '../../browser/harness/page';
import type { PictureCosts } from '../../browser/harness/picture-costs';
import { type HarnessServer, serveHarness } from '../../browser/harness/serve';
import { callFfmpeg } from '../call-ffmpeg';
import { harnessPage, type JumpsInTurn, jumpInTurn } from './jumps-in-turn';
import { makeSteppingFilms, type SteppingFilm } from './stepping-films';
import { type Costs, type Row, summary, writeCosts, writeLatencies, writeMemory } from './stepping-table';

/**
 * Measures stepping: frame source against a video element seeking to the middle of a frame and ffmpeg started once
 * a frame. Run with tsx; names of clips as arguments limit it to those (each within four minutes on a quiet machine),
 * `--only-memory` makes the 10,000 steps instead.
 */
const wanted = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const onlyMemory = process.argv.includes('--only-memory');
const withMemory = onlyMemory || wanted.length === 0;

/** Jumps of each way, turn about; `jumps.ts` makes more. */
const jumpCount = 16;
/** The longest that a second both ways is waited for. */
const longestRestMs = 20_000;

const upTo = (from: number, count: number): number[] => Array.from({ length: count }, (_, n) => from + n);

async function freshPage(server: HarnessServer): Promise<{ page: Page; end: () => Promise<void> }> {
  const browser = await chromium.launch(chromiumOptions());
  return { page: await harnessPage(browser, server), end: () => browser.close() };
}

interface Walks {
  readonly rows: Row[];
  readonly costs: Costs;
}

async function measureSource(film: SteppingFilm, server: HarnessServer, jumps: JumpsInTurn): Promise<Walks> {
  const { page, end } = await freshPage(server);
  const walk = (frames: number[], towards: -1 | 0 | 1, pace: number): Promise<Seen[]> =>
    page.evaluate(([f, t, p]) => window.harness.walk(f, t, p, true), [frames, towards, pace] as const);
  const open = (): Promise<unknown> =>
    page.evaluate((opening) => window.harness.open(...opening), film.opening);
  try {
    const costs: PictureCosts = await page.evaluate(
      (address) => window.harness.pictureCosts(address),
      server.clip(film.path),
    );
    await open();
    const n = film.pictures;
    const half = Math.min(300, n >> 1);
    const forward = await walk(upTo(0, half), 1, 0);
    const paced = Math.min(240, n - 10);
    await walk([n - 5], -1, 0);
    await page.waitForTimeout(1500);
    const backwardPaced = await walk(upTo(n - 5 - paced, paced).reverse(), -1, 100);
    await walk([n - 1], -1, 0);
    const backward = await walk(upTo(n - 1 - half, half).reverse(), -1, 0);
    const forwardPaced = await walk(upTo(n - 1 - half, 60), 1, 100);
    // nothing held from the walks
    await open();
    const near = { forward: [] as Seen[], backward: [] as Seen[] };
    const waits: number[] = [];
    for (const place of [0.2, 0.5, 0.8].map((share) => Math.round(n * share))) {
      const second = Math.min(film.rate, place, n - 1 - place);
      await walk([place], 0, 0);
      waits.push(await restUntilHeld(page, place, second));
      near.forward.push(...(await walk(upTo(place + 1, second), 1, 0)));
      near.backward.push(...(await walk(upTo(place - second, 2 * second).reverse(), -1, 0)));
      near.forward.push(...(await walk(upTo(place - second + 1, second), 1, 0)));
    }
    const memory = await page.evaluate(() => window.harness.memory());
    return {
      rows: [
        summary(film.name, 'frame source, unpaced', forward, backward, jumps.seen.source, jumps.ratio),
        summary(film.name, 'frame source, 10 steps a second', forwardPaced, backwardPaced, []),
        summary(film.name, 'frame source, a second both ways', near.forward, near.backward, []),
      ],
      costs: { ...costs, clip: film.name, waits, heldBytes: memory?.heldBytes ?? 0, load: loadavg()[0] ?? 0 },
    };
  } finally {
    await end();
  }
}

/** Milliseconds until a second to both sides of where the coach rests is decoded. */
async function restUntilHeld(page: Page, place: number, second: number): Promise<number> {
  const began = performance.now();
  const holds = page.waitForFunction(
    ([frame, reach]) => window.harness.holdsAround(frame, reach),
    [place, second] as const,
    { polling: 50, timeout: longestRestMs },
  );
  await holds.catch(() => console.log(`not all held after ${longestRestMs} ms around ${place}`));
  return performance.now() - began;
}

async function measureElement(film: SteppingFilm, server: HarnessServer, jumps: JumpsInTurn): Promise<Row> {
  const { page, end } = await freshPage(server);
  try {
    await page.evaluate((address) => window.harness.openElement(address), server.clip(film.path));
    const seek = (frames: number[]): Promise<Seen[]> =>
      page.evaluate(([times, f]) => window.harness.seekElement(times, f, 15_000), [
        frames.map((frame) => (frame + 0.5) / film.rate),
        frames,
      ] as const);
    const middle = film.pictures >> 1;
    const forward = await seek(upTo(middle, 16));
    const backward = await seek(upTo(middle - 16, 16).reverse());
    return summary(film.name, 'video element, mid-frame', forward, backward, jumps.seen.element);
  } finally {
    await end();
  }
}

async function measureCalls(film: SteppingFilm, jumps: JumpsInTurn): Promise<Row | null> {
  if (!(await findMediaTool('ffmpeg'))) return null;
  const each = async (frames: number[]): Promise<Seen[]> => {
    const seen: Seen[] = [];
    for (const frame of frames) {
      const one = await callFfmpeg(film.path, frame, film.rate);
      if (one) seen.push(one);
    }
    return seen;
  };
  const middle = film.pictures >> 1;
  return summary(
    film.name,
    'ffmpeg, one call a frame',
    await each(upTo(middle, 8)),
    await each(upTo(middle - 8, 8).reverse()),
    jumps.seen.call,
  );
}

/** 10,000 steps back and forth within a second and a half of a wandering playhead. */
async function measureMemory(film: SteppingFilm, server: HarnessServer): Promise<string[]> {
  const { page, end } = await freshPage(server);
  const { pictures } = film;
  try {
    await page.evaluate((opening) => window.harness.open(...opening), film.opening);
    const session = await page.context().browser()?.newBrowserCDPSession();
    const lines: string[] = [];
    let steps = 0;
    for (let part = 0; part < 10; part++) {
      const frames = Array.from({ length: 1000 }, (_, n) => {
        const at = part * 1000 + n;
        return Math.round(pictures / 2 + (pictures / 2 - 100) * Math.sin(at / 1600) + 90 * Math.sin(at / 60));
      });
      const seen = await page.evaluate((f) => window.harness.walk(f, 0, 0), frames);
      const wrong = seen.filter(({ frame, number }) => frame !== number).length;
      steps += seen.length;
      const memory = await page.evaluate(() => window.harness.memory());
      const { processInfo } = (await session?.send('SystemInfo.getProcessInfo')) ?? { processInfo: [] };
      const renderer = processInfo
        .filter(({ type }) => type === 'renderer')
        .map(({ id }) => residentMegabytes(id));
      lines.push(
        `| ${steps} | ${wrong} | ${Math.round((memory?.heldBytes ?? 0) / 2 ** 20)} | ${Math.max(...renderer)} |`,
      );
    }
    const left = await page.evaluate(() => window.harness.close());
    lines.push(`| after closing | | 0 | decoder pictures left open: ${left} |`);
    return lines;
  } finally {
    await end();
  }
}

function residentMegabytes(pid: number): number {
  const status = readFileSync(`/proc/${pid}/status`, 'utf8');
  return Math.round(Number(/VmRSS:\s+(\d+)/.exec(status)?.[1] ?? 0) / 1024);
}

async function jumpsOf(film: SteppingFilm, server: HarnessServer): Promise<JumpsInTurn> {
  const browser = await chromium.launch(chromiumOptions());
  try {
    return await jumpInTurn(browser, server, film, jumpCount);
  } finally {
    await browser.close();
  }
}

const server = await serveHarness();
try {
  const films = onlyMemory ? [] : await makeSteppingFilms(wanted, server);
  for (const film of films) {
    const jumps = await jumpsOf(film, server);
    const { rows, costs } = await measureSource(film, server, jumps);
    const calls = await measureCalls(film, jumps);
    rows.push(await measureElement(film, server, jumps), ...(calls ? [calls] : []));
    for (const line of [...rows, costs]) console.log(JSON.stringify(line));
    // at once: what comes after may take long
    writeLatencies(rows, `${cpus().length} processor cores, no graphics card, headless Chromium`);
    writeCosts([costs]);
  }
  if (withMemory && process.platform === 'linux') {
    const [film] = await makeSteppingFilms(['longGroups'], server);
    const memory = film ? await measureMemory(film, server) : [];
    console.log(memory.join('\n'));
    writeMemory(memory);
  }
} finally {
  await server.close();
}
