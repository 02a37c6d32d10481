import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { parseTrial } from '#core/practice/trial-schema';
import { expect, test } from './app-fixture';
import { brokenRules } from './broken-rules';
import { layTrialSwims } from './trial-swims';

test('a coach finds which head position is faster, and is told when the order misleads', async ({
  page,
  app,
}) => {
  await expect(page.locator('.swim-tile-open')).toHaveCount(7);
  await layTrialSwims(app.library);
  await page.reload();
  await expect(page.locator('.swim-tile-open')).toHaveCount(15);
  await page.keyboard.press('Shift+Digit3');
  await page.getByRole('button', { name: 'Begin a trial' }).first().click();
  await page.getByLabel('Title of the trial').fill('Head low or high?');
  expect(await brokenRules(page)).toEqual([]);

  await page.getByRole('button', { name: 'Choose swims…' }).first().click();
  await page.getByRole('combobox', { name: 'Head', exact: true }).selectOption('low');
  await expect(page.locator('.add-list li')).toHaveCount(4);
  await page.getByRole('combobox', { name: 'Head', exact: true }).selectOption('');
  await page.getByRole('combobox', { name: 'Arms', exact: true }).selectOption('stretched');
  await page.getByRole('combobox', { name: 'Swimmer' }).selectOption('Juno');
  await page.getByLabel(/^All \d+ shown/).check();
  expect(await brokenRules(page)).toEqual([]);
  await page.getByRole('button', { name: /into the trial/ }).click();

  const differences = page.getByRole('region', { name: 'Table of differences' });
  const speed = differences.getByRole('row', { name: /^Speed of the hips/ });
  await expect(speed).toContainText('clear');
  await expect(speed).toContainText('4 · 4');
  await expect(differences.getByRole('row', { name: /^Kick frequency/ })).toContainText('not yet');
  await expect(page.locator('.trial-plot svg').first()).toBeVisible();
  await page.getByText('The same as a table').first().click();
  expect(await brokenRules(page)).toEqual([]);

  // a swim whose card says nothing of the head is left out, and that is said
  await expect(page.getByText('The condition is not said for one swim, left out here.')).toBeVisible();

  // all of one kind first: the warning comes, and goes when the order is mixed again
  const warning = page.getByText(/All repeats of “low” came first/);
  await expect(warning).toHaveCount(0);
  for (let at = 1; at <= 9; at++)
    await page.getByLabel(`head of repeat ${at}`).selectOption(at <= 4 ? 'low' : 'high');
  await expect(warning).toBeVisible();
  await page.getByRole('button', { name: 'Repeat 5 earlier' }).click();
  await expect(warning).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(warning).toBeVisible();

  // a random order, held against what was swum
  await page.getByLabel('Repeats of each').fill('5');
  await page.getByRole('button', { name: 'Draw an order' }).click();
  await expect(page.locator('.order-list li')).toHaveCount(10);
  await expect(page.getByText('Never counted in breath holds', { exact: false })).toBeVisible();

  await page.getByRole('button', { name: 'CSV' }).click();
  await expect(page.getByText(/Saved: .*trial\.csv/)).toBeVisible();
  await page.getByRole('button', { name: 'Page as PDF' }).click();
  await expect(page.getByText(/Saved: .*trial\.pdf/)).toBeVisible();
  const exported = readdirSync(path.join(app.library, 'exports'));
  const csv = exported.find((name) => name.endsWith('.csv')) ?? '';
  expect(readFileSync(path.join(app.library, 'exports', csv), 'utf8').split('\r\n')).toHaveLength(11);
  const pdf = exported.find((name) => name.endsWith('.pdf')) ?? '';
  expect(
    readFileSync(path.join(app.library, 'exports', pdf))
      .subarray(0, 5)
      .toString(),
  ).toBe('%PDF-');

  await expect(page.locator('[data-save="saved"]')).toBeVisible();
  const kept = () => {
    const folder = path.join(app.library, 'trials');
    const own = readdirSync(folder).find((name) => /^[0-9a-f-]+\.json$/.test(name));
    const parsed = parseTrial(readFileSync(path.join(folder, own ?? ''), 'utf8'));
    return parsed.ok && [parsed.value.rows.length, parsed.value.plan?.repeatsEach];
  };
  await expect.poll(kept).toEqual([9, 5]);

  // the drawn order becomes a practice: one item a repeat, each with its condition, and its cautions
  await page.getByRole('button', { name: 'Put in a practice' }).click();
  await expect(page.locator('.plan-item')).toHaveCount(10);
  await expect(page.locator('.plan-item').first()).toContainText(
    /Repeat 1 of 10: (above|below) the arms.*cautions/,
  );
  await expect(page.getByLabel('Title of the practice')).toHaveValue('Trial: Head low or high?');
  // what to do in this repeat is to be read on deck, too
  await page.getByRole('button', { name: 'On deck' }).click();
  await expect(page.locator('.deck').getByText(/^Repeat 1 of 10: (above|below) the arms$/)).toBeVisible();
  await page.goBack();
  await page.goBack();

  // the sample trial says of itself that two repeats settle nothing
  await page.getByRole('button', { name: '‹ Trials' }).click();
  await page.getByRole('link', { name: /late second kick/ }).click();
  await expect(differences.getByRole('row', { name: /^Speed of the hips/ })).toContainText('too few');
});
