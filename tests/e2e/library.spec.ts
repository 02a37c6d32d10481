import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Page } from '@playwright/test';
import { expect, test } from './app-fixture';
import { brokenRules } from './broken-rules';

const tiles = (page: Page) => page.locator('.swim-tile-open');
const cardOf = (library: string, id: string): { drill: string; aids: string[]; date: string } =>
  JSON.parse(readFileSync(path.join(library, 'swims', id, 'swim.json'), 'utf8')).card;
const goTo = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Screens' }).getByRole('link', { name, exact: true }).click();

test('many swims are changed in one step and taken back in one; two versions of one are told and chosen from', async ({
  page,
  app,
}) => {
  test.slow();
  const ids = ['sample-phone-portrait', 'sample-fins-slow-motion'];
  await expect(tiles(page)).toHaveCount(7);
  const before = ids.map((id) => cardOf(app.library, id));
  await tiles(page).first().focus();
  await page.keyboard.press('x');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('x');
  await expect(page.getByText('2 swims chosen')).toBeVisible();
  await page.keyboard.press('e');
  const dialog = page.getByRole('dialog', { name: 'Change 2 cards' });
  await dialog.getByLabel('Drill', { exact: true }).check();
  await dialog.getByLabel('New drill').fill('kick to the flags');
  await dialog.getByLabel('Aids', { exact: true }).check();
  await dialog.getByLabel('Monofin').check();
  expect(await brokenRules(page)).toEqual([]);
  await dialog.getByRole('button', { name: 'Change all 2' }).click();
  await expect(page.getByText('2 cards changed.')).toBeVisible();
  for (const [at, id] of ids.entries())
    expect(cardOf(app.library, id)).toEqual({ ...before[at], drill: 'kick to the flags', aids: ['monofin'] });
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText('The cards are as they were.')).toBeVisible();
  await expect.poll(() => ids.map((id) => cardOf(app.library, id))).toEqual(before);
  // the two are still chosen: Delete takes both, Undo brings both back
  await page.keyboard.press('Delete');
  await expect(tiles(page)).toHaveCount(5);
  await page.keyboard.press('Control+z');
  await expect(tiles(page)).toHaveCount(7);

  // as a folder service leaves it when another computer changed the same swim
  const folder = path.join(app.library, 'swims', 'sample-kick-on-back');
  const text = await readFile(path.join(folder, 'swim.json'), 'utf8');
  await writeFile(
    path.join(folder, 'swim (other computer).json'),
    text.replace('"drill": "streamlined kick on the back"', '"drill": "as the other coach wrote"'),
  );
  await page.reload();
  await page.getByLabel('Needs care').selectOption('Changed in two places');
  await expect(tiles(page)).toHaveCount(1);
  await page.getByRole('button', { name: /Changed in two places/ }).click();
  const versions = page.getByRole('dialog', { name: 'Changed in two places' });
  await expect(versions.getByText('Different on the card: drill.')).toBeVisible();
  expect(await brokenRules(page)).toEqual([]);
  await versions.getByRole('button', { name: 'Use this one' }).click();
  await expect(versions).toHaveCount(0);
  await expect.poll(() => cardOf(app.library, 'sample-kick-on-back').drill).toBe('as the other coach wrote');
  const kept = readdirSync(path.join(folder, '.generations')).map((name) =>
    readFileSync(path.join(folder, '.generations', name), 'utf8'),
  );
  expect(kept.some((each) => each.includes('streamlined kick on the back'))).toBe(true);
});

test('a library is backed up and made again, a lost clip found, a swimmer erased with proof', async ({
  page,
  app,
}) => {
  const beside = path.dirname(app.library);
  await expect(tiles(page)).toHaveCount(7);
  await tiles(page).first().focus();
  await page.keyboard.press('Delete');
  await expect(tiles(page)).toHaveCount(6);
  const clip = path.join(app.library, 'swims', 'sample-arms-folded', 'arms-folded.webm');
  await mkdir(path.join(beside, 'elsewhere'));
  await rename(clip, path.join(beside, 'elsewhere', 'GX010042.webm'));
  await goTo(page, 'Library');
  await expect(page.getByText('1 swim misses its clip.')).toBeVisible();
  await expect(page.getByRole('row', { name: /^Clips 5 files/ })).toBeVisible();
  expect(await brokenRules(page)).toEqual([]);

  await page.getByRole('button', { name: /^Put back/ }).click();
  await expect(page.getByText('Nothing is in the bin.')).toBeVisible();
  await page.getByLabel('Folder to look in').fill(path.join(beside, 'elsewhere'));
  await page.getByRole('button', { name: 'Look for them' }).click();
  await expect(page.getByText('1 found in 1 files; 0 still missing.')).toBeVisible();

  const archive = path.join(beside, 'back-up.zip');
  await page.getByLabel('New archive').fill(archive);
  await page.getByRole('button', { name: 'Back up the library' }).click();
  await expect(page.getByText(/read back: every byte is as it was/)).toBeVisible();
  await page.getByRole('button', { name: 'Back up the library' }).click();
  await expect(page.getByText('back-up.zip is already there.')).toBeVisible();
  await page.getByLabel('Archive', { exact: true }).fill(archive);
  await page.getByLabel('New folder').fill(path.join(beside, 'again'));
  await page.getByRole('button', { name: 'Make the library' }).click();
  await expect(page.getByText(/✓ 7 swims/)).toBeVisible();
  expect(existsSync(path.join(beside, 'again', 'library.json'))).toBe(true);

  await page.getByRole('button', { name: 'Open this library' }).click();
  await expect(page.getByRole('heading', { name: 'Shelf' })).toBeVisible();
  await expect(tiles(page)).toHaveCount(7);
  await goTo(page, 'Library');
  await expect(page.getByText(path.join(beside, 'again'), { exact: true })).toBeVisible();
  await page.getByLabel('Folder of the library').fill(beside);
  await page.getByRole('button', { name: 'Open this folder' }).click();
  await expect(page.getByText(/is not a Submark library, and it is not empty/)).toBeVisible();
  await page.getByLabel('Folder of the library').fill(`"${app.library}"`);
  await page.getByRole('button', { name: 'Open this folder' }).click();
  await expect(page.getByRole('heading', { name: 'Shelf' })).toBeVisible();
  await goTo(page, 'Library');
  await expect(page.getByText(app.library, { exact: true })).toBeVisible();

  // the squad and a practice were changed on another computer meanwhile: both versions, and a plain choice
  const squad = await readFile(path.join(app.library, 'squad.json'), 'utf8');
  await writeFile(
    path.join(app.library, 'squad (of the other computer).json'),
    squad.replace('"name": "Ansel"', '"name": "Ansel B"'),
  );
  const plan = path.join(app.library, 'practices', 'sample-practice-2026-05-28');
  const practice = await readFile(`${plan}.json`, 'utf8');
  await writeFile(`${plan}.conflict-12345678.json`, practice.replace('Does the count hold?', 'Held?'));
  await goTo(page, 'Shelf');
  await goTo(page, 'Library');
  const clashes = page.getByRole('region', { name: 'Changed in two places' });
  await expect(clashes.getByRole('list', { name: 'The squad' })).toContainText('other: swimmers');
  await expect(clashes.getByRole('list', { name: 'Practice' })).toContainText('Held?');
  expect(await brokenRules(page)).toEqual([]);
  await clashes.getByRole('list', { name: 'The squad' }).getByText('Take this one').click();
  await expect(page.getByRole('button', { name: 'Erase Ansel B…' })).toBeVisible();
  await clashes.getByText('Keep the one in use').click();
  await expect(clashes).toHaveCount(0);
  expect(await readFile(`${plan}.json`, 'utf8')).toBe(practice);

  await page.getByRole('button', { name: 'Erase Juno…' }).click();
  const erasing = page.getByRole('dialog', { name: 'Erase Juno' });
  await expect(erasing.getByText('swims/sample-streamline-kick/streamline-kick.mp4')).toBeVisible();
  await expect(erasing.getByText(/Outside the library, not touched/)).toBeVisible();
  expect(await brokenRules(page)).toEqual([]);
  const erase = erasing.getByRole('button', { name: 'Erase for good' });
  await expect(erase).toBeDisabled();
  await erasing.getByLabel('Type the swimmer’s name to go on').fill('Juno');
  await erase.click();
  await expect(erasing.getByText('✓ Nothing of Juno is left in this library.')).toBeVisible();
  await expect(erasing.getByText(path.join(beside, 'elsewhere', 'GX010042.webm'))).toBeVisible();
  await erasing.getByRole('button', { name: 'Close' }).click();
  await expect(page.getByRole('button', { name: 'Erase Juno…' })).toHaveCount(0);
  expect(readdirSync(path.join(app.library, 'swims')).length).toBe(5);
  expect(existsSync(path.join(beside, 'elsewhere', 'GX010042.webm'))).toBe(true);
  await page.getByRole('button', { name: 'Remove thumbnails…' }).click();
  await page.getByRole('button', { name: 'Remove them' }).click();
  await expect(page.getByRole('row', { name: /^Thumbnails 0 files/ })).toBeVisible();
  await goTo(page, 'Shelf');
  await expect(tiles(page)).toHaveCount(5);
  // taken anew from the films, and kept with the swims
  await expect(page.locator('.swim-tile-picture img')).toHaveCount(5, { timeout: 30_000 });
  expect(existsSync(path.join(app.library, 'swims', 'sample-phone-portrait', 'thumb.jpg'))).toBe(true);
});

test('the season shows who was not filmed, any reading over time, and what has clearly changed', async ({
  page,
  app,
}) => {
  // someone of the squad who was never filmed
  const squad = JSON.parse(await readFile(path.join(app.library, 'squad.json'), 'utf8'));
  squad.swimmers.push({ ...squad.swimmers[1], id: 'wren', name: 'Wren', targets: [] });
  await writeFile(path.join(app.library, 'squad.json'), JSON.stringify(squad));
  await page.reload();
  await expect(page.getByRole('heading', { name: 'Wren' })).toBeVisible();
  await goTo(page, 'Season');
  const first = page.getByRole('row').nth(1);
  await expect(first).toContainText('Wren');
  await expect(first).toContainText('Never filmed');
  // the readings seen first, as small lines with their last clear change
  const late = page.getByRole('listitem').filter({ hasText: 'Kick 2 with hand exit' });
  await expect(late).toContainText('ms since 7 May 2026');
  expect(await brokenRules(page)).toEqual([]);
  await page.getByRole('link', { name: 'Pip' }).click();
  const reading = page.getByRole('combobox', { name: 'Reading' });
  await expect(reading).toBeVisible();
  await reading.selectOption({ value: 'kick2-bottom-to-exit' });
  // two days of plain butterfly, and the second kick came late on the first of them
  await expect(page.locator('.season-plot g[aria-label="dot"] > *')).toHaveCount(2);
  await expect(page.getByText(/Clear change since 7 May 2026/)).toBeVisible();
  await expect(page.locator('.season-table tbody tr')).toHaveCount(2);
  await expect(page.getByText('-120 to 0').or(page.getByText('−120 to 0'))).toBeVisible();
  // time and distance under water are never trended
  const offered = await reading
    .locator('option')
    .evaluateAll((all) => all.map((each) => each.getAttribute('value')));
  expect(
    offered.filter((id) => id?.startsWith('underwater-time') || id?.startsWith('underwater-distance')),
  ).toEqual([]);
  expect(await brokenRules(page)).toEqual([]);
  await page.locator('.season-table tbody a').first().click();
  await expect(page.locator('.bench')).toBeVisible();
});
