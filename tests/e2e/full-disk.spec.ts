import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { test as base, expect } from '@playwright/test';
import { parseSwim } from '#core/swim-file/swim-file';
import { startApp } from './started-app';

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

test('a full disk is said, keeps the marks in the window, and takes them when there is room again', async ({
  page,
  disk,
}) => {
  test.skip(disk === null, 'a small disk can only be mounted by root on Linux: not tried here');
  if (disk === null) return;
  const app = await startApp(path.join(disk, 'library'));
  try {
    await page.goto(app.address);
    await page.goto(`${new URL(app.address).origin}/#/bench/sample-phone-portrait`);
    await expect(page.locator('.where')).toBeVisible();
    await expect(page.locator('.where.waiting')).toHaveCount(0);

    const filler = path.join(disk, 'filler');
    const room = statfsSync(disk);
    writeFileSync(filler, Buffer.alloc(room.bavail * room.bsize));
    await page.locator('body').press('a');
    await expect(page.getByText('The disk is full', { exact: false }).first()).toBeVisible();
    await expect(page.locator('.glyph')).toHaveCount(1);

    rmSync(filler);
    const file = path.join(disk, 'library', 'swims', 'sample-phone-portrait', 'swim.json');
    await expect
      .poll(
        () => {
          const parsed = parseSwim(readFileSync(file, 'utf8'));
          return parsed.ok ? parsed.value.events.length : parsed.fault.code;
        },
        { timeout: 30_000 },
      )
      .toBe(1);
    await expect(page.locator('[data-save="saved"]')).toBeVisible();
  } finally {
    await app.stop();
  }
});
