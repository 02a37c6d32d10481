import { expect, type Locator, type Page } from '@playwright/test';

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Where a part of the page is, once it has stood still: what arrives above or beside it may still push it. */
export async function standingBox(part: Locator): Promise<Box> {
  const seen: (Box | null)[] = [];
  const read = async (): Promise<boolean> => {
    seen.push(await part.boundingBox());
    const [before, now] = seen.slice(-2).map((box) => JSON.stringify(box));
    return now !== 'null' && now === before;
  };
  await expect(part).toBeVisible();
  await expect.poll(read, { intervals: [80] }).toBe(true);
  return seen.at(-1) as Box;
}

/** How many there are, once their number stands and is at least so many. */
export async function standingCount(parts: Locator, least: number): Promise<number> {
  const seen: number[] = [];
  const read = async (): Promise<boolean> => {
    seen.push(await parts.count());
    const [before, now] = seen.slice(-2);
    return now !== undefined && now >= least && now === before;
  };
  await expect.poll(read, { intervals: [150] }).toBe(true);
  return seen.at(-1) ?? 0;
}

/** How long nothing may change before a screen counts as drawn, milliseconds. */
const quiet = 250;
/** A screen that changes without end is taken as it is after this, milliseconds. */
const patience = 15_000;

/** Waits until a page has drawn what it reads: nothing moves, and its content has not changed for a moment. */
export async function settled(page: Page): Promise<void> {
  await page.evaluate(
    async ([still, longest]) => {
      await new Promise<void>((resolve) => {
        const done = (): void => {
          watch.disconnect();
          clearTimeout(timer);
          clearTimeout(end);
          resolve();
        };
        let timer = setTimeout(done, still);
        const end = setTimeout(done, longest);
        const watch = new MutationObserver(() => {
          clearTimeout(timer);
          timer = setTimeout(done, still);
        });
        watch.observe(document.body, {
          subtree: true,
          childList: true,
          attributes: true,
          characterData: true,
        });
      });
      const moving = document
        .getAnimations()
        .filter(
          ({ effect, playState }) =>
            playState === 'running' && effect?.getComputedTiming().endTime !== Number.POSITIVE_INFINITY,
        );
      await Promise.allSettled(moving.map(({ finished }) => finished));
    },
    [quiet, patience] as const,
  );
}
