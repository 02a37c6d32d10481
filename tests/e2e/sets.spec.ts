import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { parsePractice } from '#core/practice/practice-file';
import type { Practice } from '#core/practice/practice-schema';
import { expect, test } from './app-fixture';
import { brokenRules } from './broken-rules';
import { standingBox } from './standing';

/** Practices on disk that are not samples. */
function ownPractices(library: string): Practice[] {
  const folder = path.join(library, 'practices');
  return readdirSync(folder)
    .filter((name) => name.endsWith('.json') && !name.startsWith('sample-'))
    .map((name) => {
      const parsed = parsePractice(readFileSync(path.join(folder, name), 'utf8'));
      if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
      return parsed.value;
    });
}

test('a coach plans a practice, logs it on deck at tablet size, and prints its card', async ({
  page,
  app,
}) => {
  await expect(page.locator('.swim-tile-open').first()).toBeVisible();
  await page.getByRole('link', { name: 'Sets' }).click();
  await expect(page.getByRole('link', { name: /Film day/ }).first()).toBeVisible();
  await expect(page.getByText('invented').first()).toBeVisible();
  expect(await brokenRules(page)).toEqual([]);

  // plan: a pattern that is checked against each swimmer's target, and metres that add up
  await page.keyboard.press('a');
  await page.getByLabel('Title of the practice').fill('Count at full effort');
  await page.getByRole('button', { name: 'Add an item' }).click();
  await page.getByText('More', { exact: true }).click();
  await page.getByLabel('Usual ones').selectOption('grown-men');
  await expect(page.getByText('8 strokes for 25 m. Right and left are even.')).toBeVisible();
  await expect(page.getByText(/▽ Pip: 8 a length, fewer than the target \(9 to 11\)/)).toBeVisible();
  await expect(page.getByText(/✓ Ansel: 8 a length/)).toBeVisible();
  await expect(page.locator('.totals-metres strong')).toHaveText('100 m');
  await expect(page.getByText('8 right, 8 left. ✓ Even.')).toBeVisible();
  await page.getByLabel('Strokes in order').fill('2 right 2 lef');
  await expect(page.getByText('“lef” is neither a number nor right, left or both.')).toBeVisible();
  await page.getByLabel('Strokes in order').fill('');
  await page.getByLabel('Strokes in order').press('Enter');
  await page.getByLabel('Strokes to hold', { exact: true }).fill('8');
  await page.getByRole('combobox', { name: 'Effort' }).selectOption('steady');

  // a second item like it, at full effort, made by copying
  await page.getByRole('button', { name: 'Copy item 1' }).click();
  await page.getByLabel('Repeats', { exact: true }).fill('2');
  await page.getByRole('combobox', { name: 'Effort' }).selectOption('full');
  await expect(page.locator('.totals-metres strong')).toHaveText('150 m');

  // a third with fins: not matched until as much is swum without
  await page.getByRole('button', { name: 'Add an item' }).click();
  await page.getByRole('combobox', { name: 'Stroke', exact: true }).selectOption('dolphin-kick');
  await page.getByLabel('Repeats', { exact: true }).fill('10');
  await page.getByRole('checkbox', { name: 'Fins' }).check();
  await expect(page.locator('[data-balance="short"]')).toHaveText(
    '△ 100 m without aids are missing to match.',
  );
  await page.getByRole('checkbox', { name: 'Fins' }).uncheck();
  await expect(page.locator('[data-balance="matched"]')).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.locator('[data-balance="short"]')).toBeVisible();

  // under water: cautions stand where it is planned, and a ladder of lengths can't be had
  await page.getByLabel('Goes under water, beyond a plain push-off').check();
  await expect(
    page.getByText('No deep or fast breathing before going under', { exact: false }),
  ).toBeVisible();
  await expect(page.getByText('Write down the rest between these underwater repeats.')).toBeVisible();
  await page.getByText('More', { exact: true }).click();
  await expect(page.getByRole('option', { name: '1-2-3: 25, 50, 75' })).toBeDisabled();
  await page.getByRole('combobox', { name: 'Pause' }).selectOption('rest');
  await expect(page.getByText('Write down the rest between these underwater repeats.')).toHaveCount(0);
  expect(await brokenRules(page)).toEqual([]);

  await page.getByRole('button', { name: 'Card as PDF' }).click();
  await expect(page.getByText(/Saved: .*practice card\.pdf/)).toBeVisible();
  const pdf = readdirSync(path.join(app.library, 'exports')).find((name) => name.endsWith('.pdf')) ?? '';
  expect(
    readFileSync(path.join(app.library, 'exports', pdf))
      .subarray(0, 5)
      .toString(),
  ).toBe('%PDF-');

  // on deck: one tap begins at the planned count, large enough for wet fingers
  await page.setViewportSize({ width: 1024, height: 768 });
  await page.getByRole('button', { name: 'On deck' }).click();
  const more = page.getByRole('button', { name: 'One stroke more for Pip' });
  const box = await standingBox(more);
  expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(60);
  await more.click();
  await expect(page.getByLabel('Strokes of Pip')).toHaveValue('8');
  await page.getByRole('button', { name: 'Start the watch of Pip' }).click();
  const stop = page.getByRole('button', { name: 'Stop the watch of Pip' });
  await expect(stop).toHaveText(/Stop .*[1-9]/);
  await stop.click();
  await expect(page.getByLabel('Time of Pip')).toHaveValue(/^0:\d\d/);
  await page.getByLabel('Film of Pip’s repeat').selectOption('sample-butterfly-together');
  await expect(page.getByRole('link', { name: /Bench/ })).toBeVisible();
  await page.getByRole('button', { name: 'One stroke more for Juno' }).click();
  await page.getByLabel('Item').selectOption({ index: 1 });
  await more.click();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('+');
  await page.keyboard.press('+');
  await expect(page.getByText('Pip held the count: 8 at full effort, 8 slow.')).toBeVisible();
  await expect(page.getByText('Juno lost the count: 9 at full effort, 8 slow.')).toBeVisible();
  expect(await brokenRules(page)).toEqual([]);

  await expect(page.locator('[data-save="saved"]')).toBeVisible();
  const logged = () =>
    ownPractices(app.library)[0]?.log.map(({ swimmerId, count, swimId }) => [swimmerId, count, swimId]);
  await expect.poll(logged).toEqual([
    ['pip', 8, 'sample-butterfly-together'],
    ['juno', 8, null],
    ['pip', 8, null],
    ['juno', 9, null],
  ]);
  expect(ownPractices(app.library)[0]?.title).toBe('Count at full effort');

  // taken away and brought back
  await page.getByRole('button', { name: '‹ Plan' }).click();
  await page.getByRole('button', { name: '‹ Sets' }).click();
  await page.getByRole('button', { name: 'Remove Count at full effort' }).click();
  await expect(page.getByRole('link', { name: /^Count at full effort/ })).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('link', { name: /^Count at full effort/ })).toBeVisible();
});

test.describe('without samples', () => {
  test.use({ samples: false });
  test('drills are shown with cautions, added, changed and taken back; ladders unfold', async ({
    page,
    app,
  }) => {
    await expect(page.getByRole('heading', { name: 'No swims yet' })).toBeVisible();
    await page.keyboard.press('Shift+Digit4');
    await expect(page.getByRole('heading', { name: 'No practice yet' })).toBeVisible();
    expect(await brokenRules(page)).toEqual([]);
    await page.getByRole('button', { name: 'Drills' }).click();
    await expect(page.locator('.drill-list > li')).toHaveCount(18);
    await page.getByRole('strong').filter({ hasText: 'Streamlined kick, strokes' }).click();
    await expect(page.getByText('Not a contest: neither distance', { exact: false })).toBeVisible();
    await page.getByRole('button', { name: 'Add a drill' }).click();
    await page.getByLabel('Name', { exact: true }).fill('Kick past the flags');
    await page.getByLabel('What for').fill('Rhythm into the wall.');
    await page.getByLabel('What to watch, a line each').fill('Feet finish both ways');
    expect(await brokenRules(page)).toEqual([]);
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await expect(page.locator('.drill-list > li')).toHaveCount(19);
    await expect(() =>
      expect(readFileSync(path.join(app.library, 'drills.json'), 'utf8')).toContain('Kick past the flags'),
    ).toPass();
    await page.getByRole('strong').filter({ hasText: 'Kick past the flags' }).click();
    await page.getByRole('button', { name: 'Remove Kick past the flags' }).click();
    await expect(page.locator('.drill-list > li')).toHaveCount(18);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect(page.locator('.drill-list > li')).toHaveCount(19);
    expect(await brokenRules(page)).toEqual([]);

    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Plan a practice' }).first().click();
    await page.getByRole('button', { name: 'Add an item' }).click();
    await page.getByText('More', { exact: true }).click();
    await page.getByRole('combobox', { name: /^Ladder/ }).selectOption('up-by-25');
    await expect(page.getByRole('list', { name: 'The repeats in order' }).getByRole('listitem')).toHaveText([
      '25',
      '50',
      '75',
    ]);
    await page.getByLabel('Rungs').fill('1-2-3-2');
    await page.getByLabel('Rungs').press('Enter');
    await expect(page.locator('.totals-metres strong')).toHaveText('200 m');
    // what is set behind the word is told on it
    await expect(page.getByText('More: Ladder', { exact: true })).toBeVisible();
  });
});
