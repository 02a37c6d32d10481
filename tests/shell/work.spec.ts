import { existsSync, mkdirSync, statSync } from 'node:fs';
import path from 'node:path';
import { exported, goTo, openBench, swimId } from './coach-steps';
import { boxTitled, clickIn, pressIn } from './desktop';
import { expect, test } from './shell-fixture';

/** Long work ends when it ends; only the story as a whole has a limit. */
const untilMade = { timeout: 0 };

test('saves a still, all kinds of exports, a handout and a video; the task bar and the power know of it', async ({
  open,
  library,
}) => {
  const { electron, page, quit } = await open();
  await electron.evaluate(({ BrowserWindow, powerSaveBlocker }) => {
    const seen = { shares: [] as number[], awake: 0 };
    (globalThis as { seen?: typeof seen }).seen = seen;
    const window = BrowserWindow.getAllWindows()[0];
    if (window)
      window.setProgressBar = (share) => {
        seen.shares.push(share);
      };
    const start = powerSaveBlocker.start.bind(powerSaveBlocker);
    powerSaveBlocker.start = (kind) => {
      seen.awake += 1;
      return start(kind);
    };
  });
  await openBench(page);
  await page.locator('body').press('i');
  await page.getByRole('dialog').getByRole('button', { name: /save/i }).click();
  await expect.poll(() => exported(library, '.png').length).toBe(1);
  await page.keyboard.press('Escape');

  await page.locator('body').press('Shift+X');
  const dialog = page.getByRole('dialog', { name: 'Export' });
  for (const name of [
    /^Readings CSV/,
    /^Events CSV/,
    /^Landmarks/,
    /^Readings, in full/,
    /^Events as captions/,
    /^Swim bundle/,
  ])
    await dialog.getByRole('checkbox', { name }).check();
  await dialog.getByRole('button', { name: /^Save \d+ files/ }).click();
  await expect.poll(() => exported(library, '.zip').length, untilMade).toBe(1);
  await expect.poll(() => exported(library, '.csv').length).toBe(3);
  await dialog.getByRole('button', { name: 'Close' }).click();

  await page.locator('body').press('Shift+V');
  const video = page.getByRole('dialog', { name: 'Video of this swim' });
  await video.getByRole('button', { name: 'Save the video' }).click();
  await expect.poll(() => exported(library, '.mp4').length, untilMade).toBe(1);
  expect(statSync(path.join(library, 'exports', exported(library, '.mp4')[0] ?? '')).size).toBeGreaterThan(
    10_000,
  );
  const seen = await electron.evaluate(
    () => (globalThis as unknown as { seen: { shares: number[]; awake: number } }).seen,
  );
  expect(seen.awake).toBeGreaterThan(0);
  expect(seen.shares.some((share) => share > 0 && share <= 1)).toBe(true);
  await expect
    .poll(() =>
      electron.evaluate(() => (globalThis as unknown as { seen: { shares: number[] } }).seen.shares.at(-1)),
    )
    .toBe(-1);

  await goTo(page, `handout/${swimId}`);
  await page.getByRole('button', { name: 'Save PDF' }).click();
  await expect.poll(() => exported(library, '.pdf').length, untilMade).toBe(1);
  await quit();
});

test('has a menu of its own, whose items run the page’s commands', async ({ open }) => {
  const { electron, page, quit } = await open();
  await expect(page.getByRole('heading', { name: 'Shelf' })).toBeVisible();
  const labels = () =>
    electron.evaluate(({ Menu }) => Menu.getApplicationMenu()?.items.map(({ label }) => label) ?? []);
  await expect.poll(labels).toContain('Shelf');
  const choose = (id: string) =>
    electron.evaluate(({ Menu }, wanted) => {
      const item = Menu.getApplicationMenu()?.getMenuItemById(wanted);
      if (!item) throw new Error(`no item ${wanted}`);
      item.click();
    }, id);
  await choose('go-sets');
  await expect(page).toHaveURL(/#\/sets/);
  expect(await labels()).not.toContain('Developer');
  await choose('next-look');
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'light');
  await expect.poll(() => electron.evaluate(({ nativeTheme }) => nativeTheme.themeSource)).toBe('light');

  await quit();
});

test('a screen that broke gives its report to the clipboard, and nobody reads there', async ({ open }) => {
  const { electron, page, quit } = await open();
  await openBench(page);
  await page.evaluate(() => {
    Number.prototype.toFixed = () => {
      throw new Error('a bug');
    };
  });
  await page.locator('body').press('ArrowRight');
  const broken = page.getByRole('alert');
  await broken.getByText('Report it').click();
  const copy = broken.getByRole('button', { name: 'Copy the report' });
  const place = await copy.boundingBox();
  if (!place) throw new Error('the button is not in sight');
  const above = await page.evaluate(() => window.outerHeight - window.innerHeight);
  // by a real mouse: text goes to the clipboard only from a page that has the focus, which a driver's keys don't give it
  clickIn(await boxTitled(/^Submark$/), {
    x: place.x + place.width / 2,
    y: place.y + place.height / 2 + above,
  });
  await expect(broken.getByText('Copied.')).toBeVisible();
  const report = await broken.locator('pre').textContent();
  expect(await electron.evaluate(({ clipboard }) => clipboard.readText())).toBe(report);
  expect(await page.evaluate(() => document.hasFocus())).toBe(true);
  expect(
    await page.evaluate(() =>
      navigator.clipboard.readText().then(
        () => 'read',
        () => 'refused',
      ),
    ),
  ).toBe('refused');
  await quit();
});

test('saves a copy under its own name where the coach says', async ({ open, library }) => {
  const { electron, page, quit } = await open();
  const downloads = path.join(path.dirname(library), 'downloads');
  mkdirSync(downloads);
  await electron.evaluate(({ app }, folder) => app.setPath('downloads', folder), downloads);
  await openBench(page);
  await page.locator('body').press('i');
  await page.getByRole('dialog').getByRole('button', { name: /save/i }).click();
  await expect.poll(() => exported(library, '.png').length).toBe(1);
  await page.getByRole('link', { name: /copy/i }).click();
  pressIn(await boxTitled(/^Save a copy$/), 'Return');
  const copy = path.join(downloads, exported(library, '.png')[0] ?? '');
  await expect.poll(() => existsSync(copy) && statSync(copy).size).toBeGreaterThan(1000);
  await quit();
});
