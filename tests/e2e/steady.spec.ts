import { readFileSync, writeFileSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page, Worker } from '@playwright/test';
import { parseSwim, serialiseSwim } from '#core/swim-file/swim-file';
import { makeNumberClip } from '#tests/electron/number-clips';
import { expect, test } from './app-fixture';
import { childrenOf } from './process-look';
import { runSoak } from './soak';
import { startApp } from './started-app';

const butterfly = 'sample-butterfly-together';

async function openBench(page: Page, id: string): Promise<void> {
  await page.evaluate((swim) => {
    window.location.hash = `#/bench/${swim}`;
  }, id);
  await expect(page.locator('.stage[data-shown-frame="0"]')).toBeVisible();
}
/** Ends a worker from inside, as running out of memory would: nobody is told. */
const die = (worker: Worker): Promise<void> => worker.evaluate(() => self.close());
const workersNamed = (page: Page, name: string): Worker[] =>
  page.workers().filter((each) => each.url().includes(name));

function marksOf(library: string, id: string): number {
  const parsed = parseSwim(readFileSync(path.join(library, 'swims', id, 'swim.json'), 'utf8'));
  if (!parsed.ok) throw new Error(parsed.fault.code);
  return parsed.value.events.length;
}

test('a film’s reader and its decoder that die are made anew, and stepping goes on at the same frame', async ({
  page,
  app,
}) => {
  expect(app.said()).toContain('library');
  await openBench(page, butterfly);
  await expect.poll(() => workersNamed(page, 'film-worker').length).toBeGreaterThan(0);
  await expect.poll(() => workersNamed(page, 'decoder-worker').length).toBeGreaterThan(0);
  await Promise.all(['film-worker', 'decoder-worker'].flatMap((name) => workersNamed(page, name)).map(die));
  await page.getByRole('slider', { name: 'Scrub through the film' }).fill('200');
  await expect(page.locator('.stage[data-shown-frame="200"]')).toBeVisible();
  await page.keyboard.press('ArrowRight');
  await expect(page.locator('.stage[data-shown-frame="201"]')).toBeVisible();
});

test('a worker that dies while it follows points is made anew, and the stretch is followed all the same', async ({
  page,
  app,
}) => {
  test.setTimeout(90_000);
  // one stretch of twelve frames is enough
  const followed = 'sample-streamline-kick';
  const file = path.join(app.library, 'swims', followed, 'swim.json');
  const parsed = parseSwim(readFileSync(file, 'utf8'));
  if (!parsed.ok) throw new Error(parsed.fault.code);
  const postures = parsed.value.postures.filter(({ frame }) => frame === 0 || frame === 12);
  writeFileSync(file, serialiseSwim({ ...parsed.value, postures, events: [] }));
  let made = 0;
  page.on('worker', (worker) => {
    if (!worker.url().includes('follow-worker')) return;
    made += 1;
    if (made > 1) return;
    // as out of memory: an error nobody in the worker catches
    void worker.evaluate(() => {
      setTimeout(() => {
        throw new Error('out of memory');
      });
    });
  });
  await openBench(page, followed);
  await page.locator('body').press('o');
  const panel = page.getByRole('complementary', { name: 'Follow and propose' });
  await expect(panel.getByText('Every stretch between body lines is followed.')).toBeVisible({
    timeout: 60_000,
  });
  await expect.poll(() => made).toBe(2);
});

test('a media tool that is killed while it makes a copy or a video is said; the copy is made again, the video can be asked for again', async ({
  page,
  app,
}) => {
  const film = path.join(tmpdir(), `submark-killed-${process.pid}.mp4`);
  await makeNumberClip(film, {
    rate: 30,
    pictures: 900,
    options: ['-c:v', 'libx265', '-preset', 'ultrafast', '-x265-params', 'log-level=error'],
  });
  /** Kills a tool called with such words, as soon as it is there: looked for before it is asked for, so as not to be late. */
  const killTool = async (words: string, ask: () => Promise<void>): Promise<void> => {
    const killed = (): boolean => {
      const [tool] = childrenOf(app.pid, words);
      if (tool === undefined) return false;
      try {
        return process.kill(tool, 'SIGKILL');
      } catch (error) {
        // it has ended between being seen and being killed: the next one, then
        if ((error as NodeJS.ErrnoException).code === 'ESRCH') return false;
        throw error;
      }
    };
    await Promise.all([expect.poll(killed, { intervals: [10] }).toBe(true), ask()]);
  };
  try {
    await page.getByLabel('Clips to add').setInputFiles(film);
    const adding = page.getByRole('dialog', { name: /^Add / });
    await adding.getByLabel('No, true speed').check();
    // every piece of a copy is written by such a one, and a copy in one go too
    await killTool('-movflags', () => adding.getByRole('button', { name: 'Add to the shelf' }).click());
    await expect(page.locator('.copy-notice, .film-trouble').first()).toContainText(
      /gave up|killed|stopped|again/i,
    );
    await page
      .getByRole('button', { name: /again|make/i })
      .first()
      .click();
    await expect(page.locator('.stage[data-shown-frame="0"]')).toBeVisible({ timeout: 60_000 });

    await openBench(page, butterfly);
    await page.keyboard.press('Shift+V');
    const dialog = page.getByRole('dialog');
    // of all that is written, videos alone have this; the rest of the copy may still be on its way
    await killTool('-profile:v', () => dialog.getByRole('button', { name: /^Save/ }).click());
    await expect(dialog.getByRole('alert')).toContainText(/gave up/i);
    await dialog.getByRole('button', { name: /^Save/ }).click();
    await expect(dialog.getByText(/saved/i).first()).toBeVisible({ timeout: 60_000 });
  } finally {
    await rm(film, { force: true });
  }
});

test('a bug on a screen keeps the marks, offers a report without personal data, and the screen opens again', async ({
  page,
  libraryFolder,
}) => {
  const app = await startApp(libraryFolder);
  try {
    await page.goto(app.address);
    await openBench(page, butterfly);
    await page.keyboard.press('ArrowRight');
    await expect(page.locator('.stage[data-shown-frame="1"]')).toBeVisible();
    const before = marksOf(libraryFolder, butterfly);
    await expect(page.locator('.glyph')).toHaveCount(before);
    await page.keyboard.press('a');
    await expect(page.locator('.glyph')).toHaveCount(before + 1);
    // a bug in what is shown, whose words hold a name as words may
    await page.evaluate(() => {
      const { toFixed } = Number.prototype;
      Number.prototype.toFixed = () => {
        throw new Error('Mara Lindt in /home/coach/film');
      };
      Object.assign(window, { mend: () => Object.assign(Number.prototype, { toFixed }) });
    });
    await page.keyboard.press('ArrowRight');
    const broken = page.getByRole('alert');
    await expect(broken).toContainText('Your marks are safe');
    await broken.getByText('Report it').click();
    await expect(broken.locator('pre')).toContainText('bench screen');
    await expect(broken.locator('pre')).toContainText(/at \S+\.js:\d+/);
    expect(await broken.locator('pre').textContent()).not.toMatch(
      /Mara|Lindt|home|coach|127\.0\.0\.1|sample-/,
    );
    await page.evaluate(() => (window as unknown as { mend(): void }).mend());
    await broken.getByRole('button', { name: 'Open again' }).click();
    await expect(page.locator('.glyph')).toHaveCount(before + 1);
  } finally {
    await app.stop();
  }
});

test('two minutes’ worth of review leaves no picture open, no listener more, and the host’s handles as they were', async () => {
  test.setTimeout(240_000);
  // what a quick coach does in two minutes, two things a second, without the coach's pauses
  const { samples, actions, bugs } = await runSoak({ actions: 240, followEvery: 99 });
  expect(actions).toBeGreaterThanOrEqual(240);
  const first = samples[1] ?? samples[0];
  const last = samples.at(-1);
  if (!first || !last) throw new Error('nothing was sampled');
  expect(bugs).toEqual([]);
  expect(samples.map(({ openFrames }) => openFrames)).toEqual(samples.map(() => 0));
  expect(last.listeners - first.listeners).toBeLessThanOrEqual(5);
  expect(last.nodes - first.nodes).toBeLessThan(500);
  expect(last.heapMb - first.heapMb).toBeLessThan(15);
  expect(last.hostHandles - first.hostHandles).toBeLessThanOrEqual(3);
});
