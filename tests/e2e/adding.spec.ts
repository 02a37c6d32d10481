import { existsSync, readdirSync } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from '@playwright/test';
import { addedSwims } from './added-swims';
import { expect, test } from './app-fixture';

const samples = fileURLToPath(new URL('../../sample-clips/library/swims/', import.meta.url));
const plainClip = path.join(samples, 'sample-butterfly-together/butterfly-together.mp4');
const slowClip = path.join(samples, 'sample-fins-slow-motion/fins-slow-motion.mp4');

const tiles = (page: Page) => page.locator('.swim-tile-open');
const picker = (page: Page) => page.getByLabel('Clips to add');

test('reads slow motion where the file tells, and says what it does', async ({ page, app }) => {
  await expect(tiles(page)).toHaveCount(7);
  await picker(page).setInputFiles(slowClip);
  const adding = page.getByRole('dialog', { name: /Add fins-slow-motion/ });
  await expect(adding.getByText(/This clip is on the shelf already: Ansel · kick with fins/)).toBeVisible();
  await expect(adding.getByText('16.0 s played, 2.0 s in life')).toBeVisible();
  await expect(adding.getByLabel('8× slower')).toBeChecked();
  await expect(adding.getByText(/filmed at 240 pictures a second/)).toBeVisible();
  await adding.getByRole('button', { name: 'Add to the shelf' }).click();
  await expect(page.locator('.bench')).toBeVisible();
  const [swim] = addedSwims(app.library);
  expect(swim?.clip.slowdown).toEqual({ factor: 8, source: 'file-tag' });
});

test('asks about slow motion where the file is silent, and adds nothing before it is answered', async ({
  page,
  app,
}) => {
  await expect(tiles(page)).toHaveCount(7);
  await picker(page).setInputFiles(plainClip);
  const adding = page.getByRole('dialog', { name: /Add butterfly-together/ });
  await adding.getByRole('button', { name: 'Add to the shelf' }).click();
  await expect(adding).toBeVisible();
  expect(addedSwims(app.library)).toEqual([]);
  await adding.getByLabel('Filmed at').fill('120');
  await expect(adding.getByLabel('2× slower')).toBeChecked();
  await adding.getByRole('button', { name: 'Add to the shelf' }).click();
  await expect(page.locator('.bench')).toBeVisible();
  expect(addedSwims(app.library)[0]?.clip.slowdown).toEqual({ factor: 2, source: 'coach' });
});

test('takes several files one after the other, and remembers the card for the next', async ({
  page,
  app,
}) => {
  await expect(tiles(page)).toHaveCount(7);
  await picker(page).setInputFiles([plainClip, slowClip]);
  const first = page.getByRole('dialog', { name: /Add butterfly-together/ });
  await expect(first.getByText('1 more to come.')).toBeVisible();
  await first.getByLabel('No, true speed').check();
  await first.getByLabel('Swimmer').fill('Rowan');
  await first.getByLabel('Snorkel').check();
  await first.getByRole('button', { name: 'Add to the shelf' }).click();
  const second = page.getByRole('dialog', { name: /Add fins-slow-motion/ });
  await expect(second.getByLabel('Swimmer')).toHaveValue('Rowan');
  await expect(second.getByLabel('Snorkel')).toBeChecked();
  await second.getByRole('button', { name: 'Add to the shelf' }).click();
  await expect(page.locator('.bench')).toBeVisible();
  const swims = addedSwims(app.library);
  expect(swims.map((each) => each.card.swimmerName)).toEqual(['Rowan', 'Rowan']);
  expect(new Set(swims.map((each) => each.card.swimmerId)).size).toBe(1);
  await page.getByRole('button', { name: /Shelf/ }).click();
  await expect(tiles(page)).toHaveCount(9);
  await expect(page.locator('.swim-tile img')).toHaveCount(9);
});

test('leaves a file where it lies when its path is given', async ({ page, app, libraryFolder }) => {
  await expect(tiles(page)).toHaveCount(7);
  const outside = path.join(path.dirname(libraryFolder), 'on a stick.mp4');
  await writeFile(outside, await readFile(plainClip));
  await page.keyboard.press('Shift+A');
  const asking = page.getByRole('dialog', { name: 'Add a clip in place' });
  await asking.getByLabel('Path of the file').fill('stick.mp4');
  await asking.getByRole('button', { name: 'Check the file' }).click();
  await expect(asking.getByRole('alert')).toContainText('Give the full path');
  await asking.getByLabel('Path of the file').fill(`"${outside}"`);
  await asking.getByRole('button', { name: 'Check the file' }).click();
  const adding = page.getByRole('dialog', { name: 'Add on a stick.mp4' });
  await adding.getByLabel('No, true speed').check();
  await adding.getByRole('button', { name: 'Add to the shelf' }).click();
  await expect(page.locator('.bench')).toBeVisible();
  expect(addedSwims(app.library)[0]?.clip.place).toEqual({ kind: 'outside', path: outside });
});

test('stops in the middle of sending and leaves nothing behind', async ({ page, app }) => {
  await expect(tiles(page)).toHaveCount(7);
  // a slow disk, so that there is a middle
  const network = await page.context().newCDPSession(page);
  const slow = { offline: false, latency: 0, downloadThroughput: -1, uploadThroughput: 100_000 };
  await network.send('Network.enable');
  await network.send('Network.emulateNetworkConditions', slow);
  await picker(page).setInputFiles(plainClip);
  const adding = page.getByRole('dialog', { name: /Add butterfly-together/ });
  await adding.getByLabel('No, true speed').check();
  const arriving = (): string[] => readdirSync(path.join(app.library, '.arriving'));
  // every picture is looked at, and nothing is copied for that
  await expect(adding.getByText('every picture can be shown')).toBeVisible();
  expect(arriving()).toEqual([]);
  await adding.getByRole('button', { name: 'Add to the shelf' }).click();
  await expect.poll(arriving).toHaveLength(1);
  await adding.getByRole('button', { name: 'Stop' }).click();
  await expect(adding.getByRole('button', { name: 'Add to the shelf' })).toBeEnabled();
  await network.send('Network.emulateNetworkConditions', { ...slow, uploadThroughput: -1 });
  await adding.getByRole('button', { name: 'Don’t add' }).click();
  await expect(adding).toHaveCount(0);
  expect(addedSwims(app.library)).toEqual([]);
  await expect.poll(arriving).toEqual([]);
});

test('says what is wrong with a broken file, and goes on with the next', async ({ page, app }) => {
  await expect(tiles(page)).toHaveCount(7);
  const cut = (await readFile(plainClip)).subarray(0, 2000);
  await picker(page).setInputFiles([
    { name: 'cut-short.mp4', mimeType: 'video/mp4', buffer: cut },
    { name: 'notes.mp4', mimeType: 'video/mp4', buffer: Buffer.from('no film at all') },
  ]);
  await expect(page.getByRole('dialog', { name: 'Add cut-short.mp4' }).getByRole('alert')).toContainText(
    /cut short|not a video/,
  );
  await page.getByRole('button', { name: 'Next clip' }).click();
  await expect(page.getByRole('dialog', { name: 'Add notes.mp4' }).getByRole('alert')).toContainText(
    'not a video',
  );
  await page.getByRole('button', { name: 'Close' }).click();
  expect(addedSwims(app.library)).toEqual([]);
});

test('takes clips dropped on the window', async ({ page, app }) => {
  await expect(tiles(page)).toHaveCount(7);
  const bytes = (await readFile(plainClip)).toString('base64');
  const carried = await page.evaluateHandle((text) => {
    const carrier = new DataTransfer();
    const raw = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
    carrier.items.add(new File([raw], 'dropped.mp4', { type: 'video/mp4' }));
    return carrier;
  }, bytes);
  await page.dispatchEvent('main', 'dragover', { dataTransfer: carried });
  await expect(page.getByText('Let go to add these clips')).toBeVisible();
  await page.dispatchEvent('main', 'drop', { dataTransfer: carried });
  await expect(page.getByRole('dialog', { name: 'Add dropped.mp4' }).getByText('1280 × 720')).toBeVisible();
  await expect(page.getByText('Let go to add these clips')).toHaveCount(0);
  expect(existsSync(app.library)).toBe(true);
});
