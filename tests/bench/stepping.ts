import { readFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { chromium, type Page } from '@playwright/test';
import { findMediaTool } from '#electron/media/find-media-tool';
import { chromiumOptions } from '../browser/harness/chromium';
import { makeClip, type MadeClip } from '../browser/harness/make-clips';
import type { Seen } from '../browser/harness/page';
import { type HarnessServer, serveHarness } from '../browser/harness/serve';
import { callFfmpeg } from './call-ffmpeg';
import { jumps } from './jump-list';
import { type Row, summary, writeLatencies, writeMemory } from './stepping-table';
import { steppingClips } from './stepping-clips';

/**
 * Measures stepping: frame source against a video element seeking to the middle of a frame and ffmpeg started once
 * a frame. Run with tsx; names of clips as arguments limit it to those, `--memory` adds the 10,000 steps.
 */
const wanted = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const onlyMemory = process.argv.includes('--only-memory');
const withMemory = onlyMemory || wanted.length === 0;

/** How long the coach looks at a picture before walking a second both ways from it. */
const restingMs = 3000;

const upTo = (from: number, count: number): number[] => Array.from({ length: count }, (_, n) => from + n);

async function freshPage(server: HarnessServer): Promise<{ page: Page; end: () => Promise<void> }> {
  const browser = await chromium.launch(chromiumOptions());
  const page = await browser.newPage();
  await page.goto(server.address);
  await page.waitForFunction(() => 'harness' in window);
  return { page, end: () => browser.close() };
}

async function measureSource(clip: MadeClip, path: string, server: HarnessServer): Promise<Row[]> {
  const { page, end } = await freshPage(server);
  const walk = (frames: number[], towards: -1 | 0 | 1, pace: number): Promise<Seen[]> =>
    page.evaluate(([f, t, p]) => window.harness.walk(f, t, p, true), [frames, towards, pace] as const);
  try {
    await page.evaluate((address) => window.harness.open(address), server.clip(path));
    const n = clip.pictures;
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
    await page.evaluate((address) => window.harness.open(address), server.clip(path));
    const random = await walk(jumps(50, n), 0, 0);
    const near = { forward: [] as Seen[], backward: [] as Seen[] };
    for (const place of [0.2, 0.5, 0.8].map((share) => Math.round(n * share))) {
      const second = Math.min(clip.rate, place, n - 1 - place);
      await walk([place], 0, 0);
      await page.waitForTimeout(restingMs);
      near.forward.push(...(await walk(upTo(place + 1, second), 1, 0)));
      near.backward.push(...(await walk(upTo(place - second, 2 * second).reverse(), -1, 0)));
      near.forward.push(...(await walk(upTo(place - second + 1, second), 1, 0)));
    }
    return [
      summary(clip.name, 'frame source, unpaced', forward, backward, random),
      summary(clip.name, 'frame source, 10 steps a second', forwardPaced, backwardPaced, []),
      summary(clip.name, 'frame source, a second both ways', near.forward, near.backward, []),
    ];
  } finally {
    await end();
  }
}

async function measureElement(clip: MadeClip, path: string, server: HarnessServer): Promise<Row> {
  const { page, end } = await freshPage(server);
  try {
    await page.evaluate((address) => window.harness.openElement(address), server.clip(path));
    const seek = (frames: number[]): Promise<Seen[]> =>
      page.evaluate(([times, f]) => window.harness.seekElement(times, f, 15_000), [
        frames.map((frame) => (frame + 0.5) / clip.rate),
        frames,
      ] as const);
    const middle = clip.pictures >> 1;
    const forward = await seek(upTo(middle, 16));
    const backward = await seek(upTo(middle - 16, 16).reverse());
    const random = await seek(jumps(50, clip.pictures).slice(0, 16));
    return summary(clip.name, 'video element, mid-frame', forward, backward, random);
  } finally {
    await end();
  }
}

async function measureCalls(clip: MadeClip, path: string): Promise<Row | null> {
  if (!(await findMediaTool('ffmpeg'))) return null;
  const each = async (frames: number[]): Promise<Seen[]> => {
    const seen: Seen[] = [];
    for (const frame of frames) {
      const one = await callFfmpeg(path, frame, clip.rate);
      if (one) seen.push(one);
    }
    return seen;
  };
  const middle = clip.pictures >> 1;
  return summary(
    clip.name,
    'ffmpeg, one call a frame',
    await each(upTo(middle, 8)),
    await each(upTo(middle - 8, 8).reverse()),
    await each(jumps(50, clip.pictures).slice(0, 16)),
  );
}

/** 10,000 steps back and forth within a second and a half of a wandering playhead. */
async function measureMemory(path: string, pictures: number, server: HarnessServer): Promise<string[]> {
  const { page, end } = await freshPage(server);
  try {
    await page.evaluate((address) => window.harness.open(address), server.clip(path));
    const session = await page.context().browser()?.newBrowserCDPSession();
    const lines: string[] = [];
    let wrong = 0;
    let steps = 0;
    for (let part = 0; part < 10; part++) {
      const frames = Array.from({ length: 1000 }, (_, n) => {
        const at = part * 1000 + n;
        return Math.round(pictures / 2 + (pictures / 2 - 100) * Math.sin(at / 1600) + 90 * Math.sin(at / 60));
      });
      const seen = await page.evaluate((f) => window.harness.walk(f, 0, 0), frames);
      wrong += seen.filter(({ frame, number }) => frame !== number).length;
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

const server = await serveHarness();
try {
  const rows: Row[] = [];
  const chosen = Object.entries(steppingClips).filter(
    ([key]) => !onlyMemory && (wanted.length === 0 || wanted.includes(key)),
  );
  for (const [, clip] of chosen) {
    const path = await makeClip(clip);
    if (!path) throw new Error('No ffmpeg here to make the clips with');
    rows.push(...(await measureSource(clip, path, server)));
    rows.push(await measureElement(clip, path, server));
    const calls = await measureCalls(clip, path);
    if (calls) rows.push(calls);
    for (const row of rows.slice(-5)) console.log(JSON.stringify(row));
  }
  if (rows.length > 0) {
    writeLatencies(rows, `${cpus().length} processor cores, no graphics card, headless Chromium`);
  }
  if (withMemory && process.platform === 'linux') {
    const path = await makeClip(steppingClips.longGroups);
    if (!path) throw new Error('No ffmpeg here to make the clips with');
    const memory = await measureMemory(path, steppingClips.longGroups.pictures, server);
    console.log(memory.join('\n'));
    writeMemory(memory);
  }
} finally {
  await server.close();
}
