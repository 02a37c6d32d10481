import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, renameSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { test as base, expect, type Page } from '@playwright/test';
import { parseSwim } from '#core/swim-file/swim-file';
import { makeLibrary, type StartedApp, startApp } from './started-app';

/** A disk of its own size, where this user may mount one; null elsewhere. */
async function smallDisk(megabytes: number): Promise<string | null> {
  if (process.platform !== 'linux') return null;
  const folder = await mkdtemp(path.join(tmpdir(), 'submark-disk-'));
  const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${megabytes}m`, 'tmpfs', folder]);
  if (mounted.status === 0) return folder;
  await rm(folder, { recursive: true });
  return null;
}

const test = base.extend<{ disk: string | null }>({
  // biome-ignore lint/correctness/noEmptyPattern: Playwright reads what a fixture needs from the pattern
  disk: async ({}, use) => {
    const disk = await smallDisk(64);
    await use(disk);
    if (!disk) return;
    spawnSync('umount', [disk]);
    await rm(disk, { recursive: true, force: true });
  },
});

const swimId = 'sample-phone-portrait';

async function openBench(page: Page, app: StartedApp): Promise<void> {
  await page.goto(`${new URL(app.address).origin}/#/bench/${swimId}`);
  await expect(page.locator('.where')).toBeVisible();
  await expect(page.locator('.where.waiting')).toHaveCount(0);
}

/** Waits until the file holds so many marks and the window says that it is saved. */
async function savedMarks(page: Page, library: string, count: number): Promise<void> {
  const file = path.join(library, 'swims', swimId, 'swim.json');
  const marks = (): number | string => {
    const parsed = parseSwim(readFileSync(file, 'utf8'));
    return parsed.ok ? parsed.value.events.length : parsed.fault.code;
  };
  await expect.poll(marks).toBe(count);
  await expect(page.locator('[data-save="saved"]')).toBeVisible();
}

test('a disk that is full, then read-only, is said, keeps the marks in the window, and takes them afterwards', async ({
  page,
  disk,
}) => {
  test.skip(disk === null, 'a small disk can only be mounted by root on Linux: not tried here');
  if (disk === null) return;
  const app = await startApp(path.join(disk, 'library'));
  try {
    await page.goto(app.address);
    await openBench(page, app);

    const filler = path.join(disk, 'filler');
    const room = statfsSync(disk);
    writeFileSync(filler, Buffer.alloc(room.bavail * room.bsize));
    await page.locator('body').press('a');
    await expect(page.getByText('The disk is full', { exact: false }).first()).toBeVisible();
    await expect(page.locator('.glyph')).toHaveCount(1);

    rmSync(filler);
    const library = path.join(disk, 'library');
    await savedMarks(page, library, 1);

    spawnSync('mount', ['-o', 'remount,ro', disk]);
    await page.locator('body').press('ArrowRight');
    await page.locator('body').press('s');
    await expect(page.locator('[data-save="failed"]')).toContainText('on a disk that can’t be written');
    spawnSync('mount', ['-o', 'remount,rw', disk]);
    await page.getByRole('button', { name: 'Try again' }).click();
    await savedMarks(page, library, 2);
  } finally {
    await app.stop();
  }
});

test('a library that is unplugged and back loses nothing; two windows on one swim keep both, and what is marked before the choice', async ({
  page,
  context,
}) => {
  const { library, remove } = await makeLibrary(true);
  const app = await startApp(library);
  try {
    await page.goto(app.address);
    await openBench(page, app);
    renameSync(library, `${library}-away`);
    await page.locator('body').press('a');
    await expect(page.locator('[data-save="failed"]')).toContainText('folder can’t be found');
    renameSync(`${library}-away`, library);
    await page.getByRole('button', { name: 'Try again' }).click();
    await savedMarks(page, library, 1);

    const other = await context.newPage();
    await openBench(other, app);
    await other.locator('body').press('ArrowRight');
    await other.locator('body').press('s');
    await savedMarks(other, library, 2);
    await page.bringToFront();
    for (const key of ['End', 'd', 'ArrowLeft', 'f']) await page.locator('body').press(key);
    await expect(page.locator('[data-save="conflict"]')).toBeVisible();
    const aside = (): number[] =>
      readdirSync(path.join(library, 'swims', swimId))
        .filter((name) => name.startsWith('swim.conflict-'))
        .map((name) => {
          const parsed = parseSwim(readFileSync(path.join(library, 'swims', swimId, name), 'utf8'));
          return parsed.ok ? parsed.value.events.length : -1;
        });
    // the first window's three marks, all of them, beside the other's two
    await expect.poll(aside).toEqual([3]);
    await page.getByRole('button', { name: 'the other' }).click();
    await savedMarks(page, library, 2);
    expect(aside()).toEqual([3]);
  } finally {
    await app.stop();
    await remove();
  }
});
