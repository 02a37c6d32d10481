import { test as base, type Page } from '@playwright/test';
import type { ClipFacts, FrameSource } from '../../../renderer/video/frame-source';
import type { Result } from '#core/host-contract/host-error';
import type { Harness, Played, Seen } from './page';
import { type HarnessServer, serveHarness } from './serve';
import type { Tasted } from './taste-clip';

/** Drives the harness page; every call runs in the browser. */
export class ClipPage {
  constructor(
    private readonly page: Page,
    private readonly server: HarnessServer,
  ) {}

  facts(path: string, asBlob = false): Promise<Result<ClipFacts>> {
    return this.page.evaluate(([address, blob]) => window.harness.facts(address, blob) as never, [
      this.server.clip(path),
      asBlob,
    ] as const);
  }

  taste(path: string): Promise<Tasted> {
    return this.page.evaluate((address) => window.harness.taste(address), this.server.clip(path));
  }

  stillsOnStage(): Promise<readonly number[]> {
    return this.page.evaluate(() => window.harness.stillsOnStage());
  }

  /** Opens a clip and throws when it can't be opened. */
  async open(path: string, budgetBytes?: number): Promise<ClipFacts> {
    const opened = await this.page.evaluate(
      ([address, budget]) => window.harness.open(address, budget) as never as Result<ClipFacts>,
      [this.server.clip(path), budgetBytes] as const,
    );
    if (!opened.ok) throw new Error(`can't be opened: ${JSON.stringify(opened.error)}`);
    return opened.value;
  }

  /** Opens a clip, with the pictures of a copy when one is given. */
  tryOpen(path: string, standIn?: string): Promise<Result<ClipFacts>> {
    return this.page.evaluate(([address, copy]) => window.harness.open(address, undefined, copy) as never, [
      this.server.clip(path),
      standIn === undefined ? undefined : this.server.clip(standIn),
    ] as const);
  }

  /** `asStage`: half size will do while moving. */
  walk(frames: readonly number[], towards: -1 | 0 | 1, pace = 0, asStage = false): Promise<Seen[]> {
    return this.page.evaluate(([list, ...how]) => window.harness.walk(list, ...how), [
      frames,
      towards,
      pace,
      asStage,
    ] as const);
  }

  rest(frame: number): ReturnType<Harness['rest']> {
    return this.page.evaluate((at) => window.harness.rest(at), frame);
  }

  wholeAtOnce(frames: readonly number[]): Promise<boolean[]> {
    return this.page.evaluate((list) => window.harness.wholeAtOnce(list), frames);
  }

  limitTo(bytes: number): Promise<number> {
    return this.page.evaluate((limit) => window.harness.limitTo(limit), bytes);
  }

  hurry(frames: readonly number[]): Promise<string[]> {
    return this.page.evaluate((list) => window.harness.hurry(list), frames);
  }

  play(plan: Parameters<Harness['play']>[0]): Promise<Played> {
    return this.page.evaluate((given) => window.harness.play(given), plan);
  }

  memory(): Promise<ReturnType<FrameSource['memory']> | null> {
    return this.page.evaluate(() => window.harness.memory());
  }

  /** Closes the clip; resolves to the number of decoder pictures still open. */
  close(): Promise<number> {
    return this.page.evaluate(() => window.harness.close());
  }

  fingerprints(frames: readonly number[]): Promise<{ frame: number; print: number[] }[]> {
    return this.page.evaluate((list) => window.harness.fingerprints(list), frames);
  }
}

export const test = base.extend<{ clips: ClipPage }, { server: HarnessServer }>({
  server: [
    // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the fixtures used from this pattern
    async ({}, use) => {
      const server = await serveHarness();
      await use(server);
      await server.close();
    },
    { scope: 'worker' },
  ],
  clips: async ({ page, server }, use) => {
    const problems: string[] = [];
    page.on('pageerror', (error) => problems.push(error.message));
    await page.goto(server.address);
    await page.waitForFunction(() => 'harness' in window);
    await use(new ClipPage(page, server));
    base.expect(problems).toEqual([]);
  },
});
export { expect } from '@playwright/test';
