import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { exported, goTo, openBench, savedEvents, stepAndMark } from './coach-steps';
import { boxTitled, pressIn } from './desktop';
import { endOf, expect, test, windowFile } from './shell-fixture';

test('starts, opens a swim, steps, marks, quits at once, and shows the mark when it is opened again', async ({
  open,
  library,
}) => {
  const first = await open();
  await expect(first.page.getByRole('heading', { name: 'Shelf' })).toBeVisible();
  expect(await first.electron.evaluate(({ app }) => app.getName())).toBe('Submark');
  const profile = await first.electron.evaluate(({ app }) => app.getPath('userData'));
  expect(profile).toBe(path.dirname(windowFile(library)));
  expect(await first.page.evaluate(() => [crossOriginIsolated, 'require' in window])).toEqual([true, false]);
  await openBench(first.page);
  const before = savedEvents(library);
  await stepAndMark(first.page);
  await first.quit();
  // on the disk, and not only in the window's storage
  expect(savedEvents(library)).toBe(before + 1);

  const second = await open();
  await openBench(second.page);
  expect(savedEvents(library)).toBe(before + 1);
  await second.quit();
});

test('the window stays where and as large as it was over starts, also when it was maximised', async ({
  open,
  library,
}) => {
  const first = await open();
  await first.electron.evaluate(({ BrowserWindow }) =>
    BrowserWindow.getAllWindows()[0]?.setBounds({ x: 200, y: 150, width: 1300, height: 850 }),
  );
  await expect
    .poll(() =>
      first.electron.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.getBounds().width),
    )
    .toBe(1300);
  await first.quit();
  const place = (): unknown => {
    const { x, y, width, height } = JSON.parse(readFileSync(windowFile(library), 'utf8')) as Record<
      string,
      number
    >;
    return { x, y, width, height };
  };
  const kept = place();
  for (let start = 0; start < 3; start++) {
    const shell = await open();
    await expect(shell.page.getByRole('heading', { name: 'Shelf' })).toBeVisible();
    // the window manager has placed it, and it has been put back
    await expect
      .poll(() =>
        shell.electron.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.getBounds()),
      )
      .toEqual(kept);
    if (start === 2)
      await shell.electron.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.maximize());
    const maximised = () =>
      shell.electron.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.isMaximized());
    await expect.poll(maximised).toBe(start === 2);
    await shell.quit();
    expect(place()).toEqual(kept);
  }
  const again = await open();
  await expect
    .poll(() =>
      again.electron.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.isMaximized()),
    )
    .toBe(true);
  await again.quit();
});

test('a second start brings the first window forward with its file, and ends', async ({
  open,
  start,
  library,
}) => {
  const first = await open();
  await expect(first.page.getByRole('heading', { name: 'Shelf' })).toBeVisible();
  await goTo(first.page, 'sets');
  const clip = path.join(library, 'swims/sample-fins-slow-motion/fins-slow-motion.mp4');
  await first.electron.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.minimize());
  expect(await endOf(start([clip]))).toBe(0);
  const adding = first.page.getByRole('dialog', { name: /Add fins-slow-motion/ });
  await expect(adding.getByLabel('Copy the file into the library')).toBeChecked();
  await expect
    .poll(() =>
      first.electron.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.isMinimized()),
    )
    .toBe(false);
  await adding.getByRole('button', { name: 'Add to the shelf' }).click();
  await expect(first.page.locator('.bench')).toBeVisible();
  await first.quit();
});

test('a program that was killed is started again on the same library, and everything marked is there', async ({
  open,
  library,
}) => {
  const first = await open();
  await openBench(first.page);
  await stepAndMark(first.page);
  await expect.poll(() => savedEvents(library)).toBe(1);
  const gone = endOf(first.electron.process());
  process.kill(first.pid, 'SIGKILL');
  await gone;
  const second = await open();
  await openBench(second.page);
  expect(savedEvents(library)).toBe(1);
  await second.quit();
});

test('is ended in order by a signal', async ({ open, library }) => {
  const shell = await open();
  await openBench(shell.page);
  const ended = endOf(shell.electron.process());
  process.kill(shell.pid, 'SIGTERM');
  expect(await ended).toBe(0);
  expect(existsSync(windowFile(library))).toBe(true);
});

test('quitting in the middle of a video leaves no program, no lock and no half file', async ({
  open,
  library,
}) => {
  const shell = await open();
  await openBench(shell.page);
  await shell.page.locator('body').press('Shift+V');
  const dialog = shell.page.getByRole('dialog', { name: 'Video of this swim' });
  await dialog.getByRole('button', { name: '⅛ speed' }).click();
  await dialog.getByRole('button', { name: 'Save the video' }).click();
  await expect(dialog.getByRole('button', { name: 'Stop' })).toBeVisible();
  await expect.poll(() => toolsOf(shell.pid).length).toBeGreaterThan(0);
  const tools = toolsOf(shell.pid);
  await shell.quit();
  for (const tool of tools) expect(existsSync(`/proc/${tool}`), `ffmpeg ${tool}`).toBe(false);
  expect(exported(library, '.mp4')).toEqual([]);
  expect(existsSync(path.join(path.dirname(windowFile(library)), 'SingletonLock'))).toBe(false);
  expect(execFileSync('ls', ['-A', path.join(library, 'exports')], { encoding: 'utf8' })).toBe('');
});

test('a start that can’t open its library says why in a box', async ({ start, library }) => {
  writeFileSync(library, 'a file in its place');
  const failing = start();
  const box = await boxTitled(/^Error$/);
  pressIn(box, 'Return');
  expect(await endOf(failing)).toBe(0);
});

/** The media programs that a program has started. */
function toolsOf(pid: number): number[] {
  const list = execFileSync('ps', ['-eo', 'pid=,ppid=,comm='], { encoding: 'utf8' });
  return list
    .split('\n')
    .map((line) => line.trim().split(/\s+/))
    .filter(([, parent, name]) => Number(parent) === pid && /^ff(mpeg|probe)/.test(name ?? ''))
    .map(([own]) => Number(own));
}
