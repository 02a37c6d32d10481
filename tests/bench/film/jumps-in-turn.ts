import type { Browser, Page } from '@playwright/test';
import type { Seen } from '../../browser/harness/page';
import type { HarnessServer } from '../../browser/harness/serve';
import { callFfmpeg } from '../call-ffmpeg';
import { jumps } from './jump-list';
import type { SteppingFilm } from './stepping-films';

export type Way = 'source' | 'element' | 'call';

export interface JumpsInTurn {
  readonly seen: Readonly<Record<Way, readonly Seen[]>>;
  /** Median of the frame source against that of the faster baseline. */
  readonly ratio: number;
}

/** A page of a browser with the harness in it. */
export async function harnessPage(browser: Browser, server: HarnessServer): Promise<Page> {
  const page = await browser.newPage();
  await page.goto(server.address);
  await page.waitForFunction(() => 'harness' in window);
  return page;
}

/**
 * Jumps to random frames, turn about: frame source, video element, ffmpeg started for the frame. What else the machine does
 * hits all three alike. Each jump of the source finds nothing held but the frame it starts from: while the others have their
 * turns it would have time to fetch half the clip.
 */
export async function jumpInTurn(
  browser: Browser,
  server: HarnessServer,
  film: SteppingFilm,
  count: number,
): Promise<JumpsInTurn> {
  const [ours, element] = [await harnessPage(browser, server), await harnessPage(browser, server)];
  try {
    await ours.evaluate((opening) => window.harness.open(...opening), film.opening);
    await element.evaluate((address) => window.harness.openElement(address), server.clip(film.path));
    const seen: Record<Way, Seen[]> = { source: [], element: [], call: [] };
    const ways: readonly ((frame: number) => Promise<void>)[] = [
      async (frame) => {
        seen.source.push(...(await ours.evaluate((f) => window.harness.jump(f), frame)));
      },
      async (frame) => {
        const asked = [(frame + 0.5) / film.rate, frame] as const;
        seen.element.push(
          ...(await element.evaluate(([time, f]) => window.harness.seekElement([time], [f], 15_000), asked)),
        );
      },
      async (frame) => {
        const call = await callFfmpeg(film.path, frame, film.rate);
        if (call) seen.call.push(call);
      },
    ];
    for (const [round, frame] of jumps(count, film.pictures).entries())
      for (let n = 0; n < ways.length; n++) await ways[(round + n) % ways.length]?.(frame);
    const baselines = [medianOf(seen.element), medianOf(seen.call)].filter((value) => !Number.isNaN(value));
    return { seen, ratio: medianOf(seen.source) / Math.min(...baselines) };
  } finally {
    await ours.close();
    await element.close();
  }
}

export const medianOf = (seen: readonly Seen[]): number =>
  seen.map(({ took }) => took).sort((a, b) => a - b)[seen.length >> 1] ?? Number.NaN;
