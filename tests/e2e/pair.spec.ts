import { existsSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { createCanvas, loadImage } from '@napi-rs/canvas';
import type { Page } from '@playwright/test';
import { execa } from 'execa';
import { findMediaTool } from '#electron/media/find-media-tool';
import { numberPattern, numberStrip, readPictureNumber } from '../../sample-clips/picture-number';
import { expect, test } from './app-fixture';
import { brokenRules } from './broken-rules';

const stage = (page: Page, side: 'A' | 'B') => page.locator(`.pair-stage[data-side="${side}"]`);
const where = (page: Page, side: 'A' | 'B') => page.locator(`.where[data-side="${side}"]`);

/** The frames both stages stand on, once their pictures are shown. */
async function framesShown(page: Page): Promise<readonly [number, number]> {
  let frames: readonly [number, number] = [-1, -1];
  const read = async (): Promise<boolean> => {
    const [asked, shown] = await page.evaluate(() => {
      const of = (each: string, name: string): (string | null)[] =>
        ['A', 'B'].map(
          (side) => document.querySelector(`${each}[data-side="${side}"]`)?.getAttribute(name) ?? null,
        );
      return [of('.where', 'data-frame'), of('.pair-stage', 'data-shown-frame')] as const;
    });
    frames = [Number(asked[0] ?? Number.NaN), Number(asked[1] ?? Number.NaN)];
    return frames.every(Number.isInteger) && frames.every((frame, n) => shown[n] === String(frame));
  };
  await expect.poll(read).toBe(true);
  return frames;
}

/** The number in the picture on a stage (1280 × 720, whole in view), read from the screen's own pixels. */
async function numberOn(page: Page, side: 'A' | 'B'): Promise<number> {
  const strip = numberStrip(1280, 720);
  const blocks = numberPattern(0).length;
  const greens = await stage(page, side)
    .locator('canvas.stage-picture')
    .evaluate(
      (canvas, { left, top, block, count }) => {
        const { width, height } = canvas as HTMLCanvasElement;
        const scale = Math.min(width / 1280, height / 720);
        const at = (x: number, y: number): [number, number] => [
          Math.round((width - 1280 * scale) / 2 + x * scale),
          Math.round((height - 720 * scale) / 2 + y * scale),
        ];
        const context = (canvas as HTMLCanvasElement).getContext('2d');
        return Array.from({ length: count }, (_, i) => {
          const [x, y] = at(left + (i + 0.5) * block, top + block / 2);
          return context?.getImageData(x, y, 1, 1).data[1] ?? 128;
        });
      },
      { ...strip, count: blocks },
    );
  const seen = greens.map((green) => green > 128);
  return (
    Array.from({ length: 1024 }, (_, n) => n).find((n) =>
      numberPattern(n).every((white, i) => white === seen[i]),
    ) ?? -1
  );
}

/** Waits until both stages show the frames, and reads them from the pictures themselves. */
async function bothShow(page: Page, a: number, b: number): Promise<void> {
  await expect(where(page, 'A')).toHaveAttribute('data-frame', String(a));
  await expect(where(page, 'B')).toHaveAttribute('data-frame', String(b));
  await expect(stage(page, 'A')).toHaveAttribute('data-shown-frame', String(a));
  await expect(stage(page, 'B')).toHaveAttribute('data-shown-frame', String(b));
  await expect.poll(() => numberOn(page, 'A')).toBe(a);
  await expect.poll(() => numberOn(page, 'B')).toBe(b);
}

test('a coach pairs two swims by key, steps both in lock and reads the differences', async ({
  page,
  app,
}) => {
  expect(path.isAbsolute(app.library)).toBe(true);
  // from the shelf, by key: the swim in focus is A, its likeliest partner is offered first
  await page.locator('[data-swim="sample-butterfly-together"]').focus();
  await page.keyboard.press('p');
  const listB = page.getByRole('group', { name: 'B', exact: true });
  await expect(
    page.getByRole('group', { name: 'A', exact: true }).getByRole('radio', { checked: true }),
  ).toHaveCount(1);
  await listB.getByRole('radio').nth(1).check();
  await page.getByRole('button', { name: 'Open the pair' }).click();

  // both stand on their first hand entry; what one steps, the other follows
  await expect(where(page, 'A')).toContainText('0.000 s from the lock');
  await expect(where(page, 'B')).toContainText('0.000 s from the lock');
  const [first, second] = await framesShown(page);
  await bothShow(page, first, second);
  for (let i = 0; i < 7; i++) await page.keyboard.press('ArrowRight');
  await bothShow(page, first + 7, second + 7);
  await page.keyboard.press('b');
  await page.keyboard.press('Shift+ArrowRight');
  await bothShow(page, first + 17, second + 17);

  // free, one moves alone; locked where they stand, they go on together
  await page.keyboard.press('f');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('ArrowLeft');
  await bothShow(page, first + 17, second + 15);
  await page.keyboard.press('l');
  await page.keyboard.press('ArrowRight');
  await bothShow(page, first + 18, second + 16);

  // locked on another event, chosen by name
  const lockB = page.getByRole('region', { name: 'Swim B' }).getByRole('combobox');
  const option = lockB
    .locator('option')
    .filter({ hasText: /^kick bottom/ })
    .nth(1);
  await lockB.selectOption((await option.getAttribute('value')) ?? '');
  const glyph = page.locator('.pair-glyphs .glyph[data-side="B"][data-kind="kick-bottom"]').nth(1);
  await expect(where(page, 'B')).toHaveAttribute(
    'data-frame',
    (await glyph.getAttribute('data-frame')) ?? '',
  );

  // in percent of the cycle, a whole stroke of one is a whole stroke of the other
  await page.keyboard.press('c');
  await expect(page.getByRole('button', { name: '% of cycle' })).toHaveAttribute('aria-pressed', 'true');

  // mirrored, same length, B on A
  for (const key of ['m', 's', 'o']) await page.keyboard.press(key);
  await expect(stage(page, 'B')).toContainText('mirrored');

  // the late kick is clear, the entry is within marking error, breathing strokes apart from others
  const table = page.getByRole('complementary', { name: 'Differences' });
  const late = table.locator('[data-reading="kick2-bottom-to-exit"][data-strokes="breathing"]');
  await expect(late).toHaveAttribute('data-verdict', 'clear');
  await expect(late).toContainText('+100');
  await expect(
    table.locator('[data-reading="kick1-top-to-entry"][data-strokes="breathing"]'),
  ).toHaveAttribute('data-verdict', 'within-error');
  expect(await brokenRules(page)).toEqual([]);

  // played, both stand still together
  await page.keyboard.press('t');
  await page.keyboard.press('g');
  await expect(where(page, 'A')).toContainText('0.000 s from the lock');
  const [lockedA] = await framesShown(page);
  // slowly: stopped long before the end on the slowest machine
  const slow = page.getByRole('button', { name: '⅛×' });
  await slow.click();
  // on a button, Space would press the button
  await slow.blur();
  await page.keyboard.press('Space');
  await expect
    .poll(async () => Number(await where(page, 'A').getAttribute('data-frame')))
    .toBeGreaterThan(lockedA + 1);
  await page.keyboard.press('Space');
  await expect(page.getByRole('button', { name: '▶ Play' })).toBeVisible();
  await framesShown(page);
});

test('a coach saves a video of both: the stages’ own frames, slowed, with words, whole and alone in its folder', async ({
  page,
  app,
}) => {
  const base = new URL(page.url()).origin;
  await page.goto(`${base}/#/pair/sample-butterfly-together/sample-butterfly-late-kick`);
  await expect(where(page, 'A')).toContainText('0.000 s from the lock');
  const [lockedA] = await framesShown(page);
  // a video from the lock on, at half speed, without words over the pictures' numbers
  await page.keyboard.press('v');
  const dialog = page.getByRole('dialog', { name: 'Video of both, side by side' });
  await dialog.getByLabel(/^From/).fill('0');
  await dialog.getByLabel('To', { exact: true }).fill('0.25');
  await dialog.getByRole('button', { name: '½ speed' }).click();
  await dialog.getByLabel('Title, frame and time').uncheck();
  await dialog.getByLabel('Event names').uncheck();
  await dialog.getByLabel('Your words under it').fill('Kick two comes late');
  expect(await brokenRules(page)).toEqual([]);
  await dialog.getByRole('button', { name: 'Save the video' }).click();
  await expect(dialog.getByText('Saved', { exact: true })).toBeVisible({ timeout: 60_000 });
  const exports = path.join(app.library, 'exports');
  const name = readdirSync(exports).find((each) => each.endsWith('.mp4')) ?? '';
  expect(readdirSync(exports)).toEqual([name]);
  const file = path.join(exports, name);
  expect(existsSync(file)).toBe(true);
  expect(await videoFacts(file)).toMatchObject({
    codec_name: 'h264',
    width: 1920,
    pix_fmt: 'yuv420p',
    nb_frames: '16',
  });
  expect(await numbersIn(file)).toEqual(Array.from({ length: 16 }, (_, n) => lockedA + n));
});

test('a coach saves a still of both: the two frames shown, side by side at full height', async ({
  page,
  app,
}) => {
  const base = new URL(page.url()).origin;
  await page.goto(`${base}/#/pair/sample-butterfly-together/sample-butterfly-late-kick`);
  await expect(where(page, 'A')).toContainText('0.000 s from the lock');
  const frames = await framesShown(page);
  await page.keyboard.press('i');
  const dialog = page.getByRole('dialog', { name: 'Still of both swims' });
  await expect(dialog.getByRole('img', { name: 'The still as it will be saved' })).toBeVisible();
  expect(await brokenRules(page)).toEqual([]);
  await dialog.getByRole('button', { name: 'Save the still' }).click();
  await expect(dialog.getByText('Saved', { exact: true })).toBeVisible();
  const exports = path.join(app.library, 'exports');
  const name = readdirSync(exports).find((each) => each.endsWith('.png')) ?? '';
  const picture = await loadImage(path.join(exports, name));
  expect(picture.height).toBe(720);
  expect(picture.width).toBeGreaterThan(2 * 1280);
  const canvas = createCanvas(picture.width, 720);
  const context = canvas.getContext('2d');
  context.drawImage(picture, 0, 0);
  const seen = [0, picture.width - 1280].map((left) =>
    readPictureNumber(context.getImageData(left, 0, 1280, 720).data, 1280, 720),
  );
  expect(seen).toEqual(frames);
});

async function videoFacts(file: string): Promise<unknown> {
  const tool = await findMediaTool('ffprobe');
  const asked = ['-v', 'error', '-show_streams', '-of', 'json', file];
  const { stdout } = await execa(tool?.path ?? 'ffprobe', asked);
  const { streams } = JSON.parse(stdout) as { streams: unknown[] };
  expect(streams.length).toBe(1);
  return streams[0];
}

/** The numbers in the left pictures of a video, as another decoder shows them. */
async function numbersIn(file: string): Promise<(number | null)[]> {
  const tool = await findMediaTool('ffmpeg');
  const { stdout } = await execa(
    tool?.path ?? 'ffmpeg',
    [
      ...['-v', 'error', '-i', file, '-vf', 'crop=960:540:0:0,scale=1280:720'],
      ...['-pix_fmt', 'rgba', '-f', 'rawvideo', 'pipe:1'],
    ],
    { encoding: 'buffer', stripFinalNewline: false, maxBuffer: 1e9 },
  );
  const size = 1280 * 720 * 4;
  return Array.from({ length: Math.floor(stdout.length / size) }, (_, n) =>
    readPictureNumber(stdout.subarray(n * size, (n + 1) * size), 1280, 720),
  );
}

test('fins against bare feet give no verdict, and two stretches of one swim are two stages of one document', async ({
  page,
  app,
}) => {
  const base = new URL(page.url()).origin;
  expect(path.isAbsolute(app.library)).toBe(true);
  await page.goto(`${base}/#/pair/sample-streamline-kick/sample-fins-slow-motion`);
  const table = page.getByRole('complementary', { name: 'Differences' });
  await expect(table.getByRole('list', { name: 'Not alike' })).toContainText(
    /Aids: A .*bare feet.*, B .*fins/,
  );
  await expect(table.locator('tr[data-verdict]').first()).toBeVisible();
  await expect(table.locator('[data-verdict="clear"], [data-verdict="within-error"]')).toHaveCount(0);

  await page.goto(`${base}/#/pair/sample-butterfly-together/sample-butterfly-together`);
  await framesShown(page);
  await page.keyboard.press('f');
  await page.keyboard.press('a');
  await page.keyboard.press('Home');
  for (let i = 0; i < 9; i++) await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press(']');
  await page.keyboard.press('b');
  for (let i = 0; i < 9; i++) await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('[');
  const sideOf = (name: string) => page.getByRole('region', { name });
  await expect(sideOf('Swim A').getByRole('button', { name: '1–91' })).toBeVisible();
  await expect(sideOf('Swim B').getByRole('button', { name: /^\d+–252$/ })).toBeVisible();
  await expect(table.locator('tr[data-verdict]').first()).toBeVisible();
});
