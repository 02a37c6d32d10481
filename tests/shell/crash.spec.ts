import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { chromium, type ElectronApplication, type Page } from '@playwright/test';
import { openBench, savedEvents, stepAndMark } from './coach-steps';
import { boxTitled, isThere, pressIn, windowUnder } from './desktop';
import { endOf, expect, test, windowFile } from './shell-fixture';

/** The frame on the bench, asked of the window itself: its page is a new one that the driver doesn't know. */
const frameShown = (electron: ElectronApplication): Promise<string> =>
  electron.evaluate(({ BrowserWindow }) =>
    BrowserWindow.getAllWindows()[0]
      ?.webContents.executeJavaScript("document.querySelector('.stage')?.dataset.shownFrame ?? ''")
      .catch(() => ''),
  );

test('a page that crashed is loaded again, with everything marked', async ({ open, library }) => {
  const { electron, page, quit } = await open();
  await openBench(page);
  await stepAndMark(page);
  await expect.poll(() => savedEvents(library)).toBe(1);
  const crashed = page.waitForEvent('crash');
  await electron.evaluate(({ BrowserWindow }) =>
    BrowserWindow.getAllWindows()[0]?.webContents.forcefullyCrashRenderer(),
  );
  await crashed;
  await expect.poll(() => frameShown(electron)).toMatch(/\d/);
  expect(savedEvents(library)).toBe(1);
  await quit();
});

test('a page that hangs is asked about over the window, and loaded again when the coach says so', async ({
  start,
  library,
}) => {
  // not by the usual driver: no page counts as hung while a debugger is attached to it
  const child = start(['--remote-debugging-port=0']);
  const told = path.join(path.dirname(windowFile(library)), 'DevToolsActivePort');
  const port = (): string => (existsSync(told) ? (readFileSync(told, 'utf8').split('\n')[0] ?? '') : '');
  await expect.poll(port).toMatch(/\d/);
  const onPage = async <T>(act: (page: Page) => Promise<T>): Promise<T> => {
    const browser = await chromium.connectOverCDP(`http://127.0.0.1:${port()}`, { noDefaults: true });
    try {
      const context = browser.contexts()[0];
      if (!context) throw new Error('there is no page');
      return await act(context.pages()[0] ?? (await context.waitForEvent('page')));
    } finally {
      await browser.close();
    }
  };
  const window = await boxTitled(/^Submark$/);
  await onPage(async (page) => {
    await openBench(page);
    await stepAndMark(page);
    await expect.poll(() => savedEvents(library)).toBe(1);
    await page.evaluate(() => {
      setTimeout(() => {
        for (;;);
      }, 500);
    });
  });
  // it hangs once it leaves the coach's keys unanswered
  await expect
    .poll(
      () => {
        pressIn(window, 'F9');
        return isThere(/^Submark isn’t answering$/);
      },
      { timeout: 90_000, intervals: [2000] },
    )
    .toBe(true);
  const box = await boxTitled(/^Submark isn’t answering$/);
  expect(windowUnder(box)).toBe(Number(window));
  pressIn(box, 'Tab');
  pressIn(box, 'Return');
  // a driver that comes or leaves while a page's workers start leaves them waiting for it: first let them start
  await new Promise((resolve) => setTimeout(resolve, 8000));
  await onPage((page) => expect(page.locator('.stage')).toHaveAttribute('data-shown-frame', /\d/));
  expect(savedEvents(library)).toBe(1);
  const ended = endOf(child);
  child.kill('SIGTERM');
  expect(await ended).toBe(0);
});

test('an error of the host that nobody awaited is told, work is ended, and what was marked meanwhile is saved', async ({
  open,
  library,
}) => {
  const { electron, page } = await open();
  await openBench(page);
  await stepAndMark(page);
  await expect.poll(() => savedEvents(library)).toBe(1);
  const ended = endOf(electron.process());
  await electron.evaluate(() => {
    setTimeout(() => {
      throw new Error('a bug');
    }, 0);
  });
  const box = await boxTitled(/^Something in Submark broke$/);
  expect(windowUnder(box)).toBe(Number(await boxTitled(/^Submark$/)));
  // a mark on its way as the message came up
  await page.locator('body').press('s');
  pressIn(box, 'Escape');
  expect(await ended).toBe(1);
  expect(savedEvents(library)).toBe(2);
});
