import { openBench, savedEvents, stepAndMark } from './coach-steps';
import { boxTitled, pressIn } from './desktop';
import { endOf, expect, test } from './shell-fixture';

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
  const shown = () =>
    electron.evaluate(({ BrowserWindow }) =>
      BrowserWindow.getAllWindows()[0]
        ?.webContents.executeJavaScript("document.querySelector('.stage')?.dataset.shownFrame ?? ''")
        .catch(() => ''),
    );
  await expect.poll(shown).toMatch(/\d/);
  expect(savedEvents(library)).toBe(1);
  await quit();
});

test('an error of the host that nobody awaited is told, work is ended, and the coach may quit', async ({
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
  pressIn(await boxTitled(/^Something in Submark broke$/), 'Escape');
  expect(await ended).toBe(1);
});
