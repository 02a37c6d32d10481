import { existsSync, readdirSync } from 'node:fs';
import { readFile, rename, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Page } from '@playwright/test';
import { addedSwims } from './added-swims';
import { expect, test } from './app-fixture';

const tiles = (page: Page) => page.locator('.swim-tile-open');

test.describe('with the sample swims', () => {
  test('shows them by swimmer, marked as invented, and finds them as the coach types', async ({
    page,
    app,
  }) => {
    await expect(tiles(page)).toHaveCount(7);
    await expect(page.locator('.swim-tile').getByText('invented')).toHaveCount(7);
    await expect(page.locator('.swim-tile').getByText(/±/).first()).toBeVisible();

    await page.keyboard.press('/');
    await page.keyboard.type('fins');
    await expect(tiles(page)).toHaveCount(1);
    await expect(page.getByText('1 of 7 swims')).toBeVisible();
    await page.getByRole('button', { name: 'Show all' }).click();
    await page.getByLabel('Stroke').selectOption('Butterfly');
    await expect(tiles(page)).toHaveCount(2);
    await page.getByLabel('Stroke').selectOption('Dolphin kick');
    await expect(tiles(page)).toHaveCount(5);
    await page.getByLabel('Swimmer').selectOption('Pip');
    await page.getByRole('searchbox').fill('no such swim');
    await expect(page.getByText('No swim matches.')).toBeVisible();
    await page.getByRole('button', { name: 'Show all 7' }).click();
    await expect(tiles(page)).toHaveCount(7);
    expect(app.said()).not.toMatch(/error/i);
  });

  test('gives rows of tiles room of their own at any width, and keeps its main button in the bar', async ({
    page,
    app,
  }) => {
    await expect(tiles(page)).toHaveCount(7);
    for (const width of [1280, 1424, 1600, 1024]) {
      await page.setViewportSize({ width, height: 860 });
      await expect
        .poll(
          () =>
            page.locator('.shelf-grid').evaluateAll((rows) => {
              const places = rows.map((row) => row.getBoundingClientRect()).sort((a, b) => a.top - b.top);
              return places.slice(1).filter(({ top }, i) => top < (places[i]?.bottom ?? 0) - 1).length;
            }),
          { message: `rows that overlap at ${width}` },
        )
        .toBe(0);
      if (width > 1360) {
        const bar = page.locator('.page-bar');
        const [add, help] = [
          bar.getByRole('button', { name: /Add swims/ }),
          bar.locator('.key-sheet-button'),
        ];
        const [a, b] = [await add.boundingBox(), await help.boundingBox()];
        expect(Math.abs((a?.y ?? 0) - (b?.y ?? 99)), `one line at ${width}`).toBeLessThan(8);
      }
    }
    expect(app.said()).not.toMatch(/error/i);
  });

  test('is walked by arrows, opened by Enter, and come back to at the same swim', async ({ page, app }) => {
    await expect(tiles(page)).toHaveCount(7);
    await tiles(page).first().focus();
    await page.keyboard.press('ArrowRight');
    await expect(tiles(page).nth(1)).toBeFocused();
    await page.keyboard.press('ArrowDown');
    await expect(tiles(page).nth(3)).toBeFocused();
    await page.keyboard.press('End');
    await expect(tiles(page).nth(6)).toBeFocused();
    await page.keyboard.press('ArrowLeft');
    await expect(tiles(page).nth(5)).toBeFocused();
    await page.keyboard.press('ArrowUp');
    await expect(tiles(page).nth(3)).toBeFocused();
    // Tab comes to one tile only
    await expect(page.locator('.swim-tile-open[tabindex="0"]')).toHaveCount(1);
    const swim = (await tiles(page).nth(3).getAttribute('data-swim')) ?? '';
    await page.keyboard.press('Enter');
    await expect(page.getByRole('button', { name: /Shelf/ })).toBeVisible();
    await page.getByRole('button', { name: /Shelf/ }).click();
    await expect(page.locator(`[data-swim="${swim}"]`)).toBeFocused();
    expect(existsSync(app.library)).toBe(true);
  });

  test('moves a swim to the bin with Delete and brings it back whole', async ({ page, app }) => {
    await expect(tiles(page)).toHaveCount(7);
    const folders = (): string[] => readdirSync(path.join(app.library, 'swims')).sort();
    const before = folders();
    await tiles(page).first().focus();
    await page.keyboard.press('Delete');
    await expect(tiles(page)).toHaveCount(6);
    await expect.poll(folders).toHaveLength(6);
    // the neighbour has the focus, so Delete again takes the next one
    await expect(tiles(page).first()).toBeFocused();
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect(tiles(page)).toHaveCount(7);
    await expect(tiles(page).first()).toBeFocused();
    await expect.poll(folders).toEqual(before);

    await page.keyboard.press('Delete');
    await expect(tiles(page)).toHaveCount(6);
    await page.keyboard.press('Control+z');
    await expect(tiles(page)).toHaveCount(7);
    await expect.poll(folders).toEqual(before);
  });

  test('keeps the look, and tells every key on one sheet', async ({ page, app }) => {
    await page.getByRole('radio', { name: 'Glare' }).check();
    await expect(page.locator('html')).toHaveAttribute('data-theme', 'glare');
    await page.reload();
    await expect(page.locator('html')).toHaveAttribute('data-theme', 'glare');
    await expect(tiles(page)).toHaveCount(7);
    await page.keyboard.press('Shift+L');
    await expect(page.locator('html')).toHaveAttribute('data-theme', 'dim');
    await page.keyboard.press('?');
    const sheet = page.getByRole('dialog', { name: 'Keys and look' });
    await expect(sheet.getByText('Move the swim, or all chosen, to the bin')).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(sheet).toHaveCount(0);
    await tiles(page).first().press('Enter');
    await expect(page.locator('.bench')).toBeVisible();
    await page.getByRole('button', { name: 'Keys and look' }).click();
    await expect(sheet.getByText('One frame back', { exact: true })).toBeVisible();
    await expect(sheet.getByText('Move the swim, or all chosen, to the bin')).toHaveCount(0);
    expect(app.said()).not.toMatch(/error/i);
  });

  test('follows a setting for more contrast until a look is chosen', async ({ page, app }) => {
    await page.emulateMedia({ contrast: 'more' });
    await expect(page.locator('html')).toHaveAttribute('data-theme', 'glare');
    await page.getByRole('radio', { name: 'Light' }).check();
    await expect(page.locator('html')).toHaveAttribute('data-theme', 'light');
    await page.emulateMedia({ contrast: 'no-preference' });
    await expect(page.locator('html')).toHaveAttribute('data-theme', 'light');
    expect(existsSync(app.library)).toBe(true);
  });

  test('keeps what is said of a swimmer, and asks before losing it', async ({ page, app }) => {
    await page.getByRole('button', { name: 'About Pip' }).click();
    const about = page.getByRole('dialog', { name: 'Pip' });
    await about.getByLabel('Streamline length').fill('2.05');
    await page.keyboard.press('Escape');
    const asks = page.getByRole('dialog', { name: 'Close without saving?' });
    await asks.getByRole('button', { name: 'Go back' }).click();
    await about.getByLabel('Given by').fill('The other guardian');
    await about.getByRole('button', { name: 'Save', exact: true }).click();
    await expect(about).toHaveCount(0);
    const kept = async (): Promise<unknown> => {
      const squad = JSON.parse(await readFile(path.join(app.library, 'squad.json'), 'utf8'));
      const pip = squad.swimmers.find((each: { name: string }) => each.name === 'Pip');
      return [pip.streamlineMetres, pip.consent?.givenBy];
    };
    await expect.poll(kept).toEqual([2.05, 'The other guardian']);
  });
});

test.describe('an empty library', () => {
  test.use({ samples: false });

  test('teaches how a swim comes to be here', async ({ page, app }) => {
    await expect(page.getByRole('heading', { name: 'No swims yet' })).toBeVisible();
    await expect(page.getByText(/no hyperventilating/)).toBeVisible();
    await expect(page.getByRole('searchbox')).toHaveCount(0);
    expect(addedSwims(app.library)).toEqual([]);
  });
});

test.describe('a library in trouble', () => {
  test.beforeEach(async ({ page, app }) => {
    await expect(tiles(page)).toHaveCount(7);
    const file = (id: string): string => path.join(app.library, 'swims', id, 'swim.json');
    await writeFile(file('sample-arms-folded'), '{ "format": "submark-swim", "ver');
    const swim = JSON.parse(await readFile(file('sample-streamline-kick'), 'utf8'));
    await writeFile(file('sample-streamline-kick'), JSON.stringify({ ...swim, version: 99 }));
    await writeFile(path.join(app.library, 'coach.json'), '{ "format": "submark-coach", "ver');
    await page.reload();
  });

  test('names damaged swims and those of a newer version in a sentence each, and shows the others', async ({
    page,
    app,
  }) => {
    // readings on the tiles take the coach's marking error for assumed then, which is said
    await expect(page.getByText(/marking error can’t be read from coach\.json.*assumed/)).toBeVisible();
    await expect(tiles(page)).toHaveCount(5);
    const messages = page.getByRole('region', { name: /can’t be shown/ });
    await expect(messages.getByText(/sample-arms-folded.*can’t read/)).toBeVisible();
    await expect(messages.getByText(/sample-streamline-kick.*newer Submark.*99/)).toBeVisible();
    const text = await readFile(path.join(app.library, 'swims/sample-arms-folded/swim.json'), 'utf8');
    expect(text).toBe('{ "format": "submark-swim", "ver');
  });

  test('says when the library’s folder is gone, and goes on when it is back', async ({ page, app }) => {
    const away = `${app.library}-away`;
    await rename(app.library, away);
    await page.reload();
    await expect(page.getByRole('alert')).toContainText('can’t be found');
    await rename(away, app.library);
    await page.getByRole('button', { name: 'Try again' }).click();
    await expect(tiles(page)).toHaveCount(5);
  });
});
