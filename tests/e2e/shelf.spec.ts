import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { readFile, rename, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from '@playwright/test';
import { parseSwim } from '#core/swim-file/swim-file';
import type { Swim } from '#core/swim-file/swim-schema';
import { expect, test } from './app-fixture';

const samples = fileURLToPath(new URL('../../sample-clips/library/swims/', import.meta.url));
const plainClip = path.join(samples, 'sample-butterfly-together/butterfly-together.mp4');
const slowClip = path.join(samples, 'sample-fins-slow-motion/fins-slow-motion.mp4');

const tiles = (page: Page) => page.locator('.swim-tile-open');
const picker = (page: Page) => page.getByLabel('Clips to add');

function addedSwims(library: string): Swim[] {
  return readdirSync(path.join(library, 'swims'))
    .filter((each) => !each.startsWith('sample-'))
    .map((each) => {
      const parsed = parseSwim(readFileSync(path.join(library, 'swims', each, 'swim.json'), 'utf8'));
      if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
      return parsed.value;
    });
}

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
    await expect(page.getByText('No swim is like that.')).toBeVisible();
    await page.getByRole('button', { name: 'Show all 7' }).click();
    await expect(tiles(page)).toHaveCount(7);
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

  test('follows a wish for more contrast until a look is chosen', async ({ page, app }) => {
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
    const asks = page.getByRole('dialog', { name: 'Leave without keeping?' });
    await asks.getByRole('button', { name: 'Go on' }).click();
    await about.getByLabel('Given by').fill('The other guardian');
    await about.getByRole('button', { name: 'Keep' }).click();
    await expect(about).toHaveCount(0);
    const kept = async (): Promise<unknown> => {
      const squad = JSON.parse(await readFile(path.join(app.library, 'squad.json'), 'utf8'));
      const pip = squad.swimmers.find((each: { name: string }) => each.name === 'Pip');
      return [pip.streamlineMetres, pip.consent?.givenBy];
    };
    await expect.poll(kept).toEqual([2.05, 'The other guardian']);
  });
});

test.describe('adding swims', () => {
  test('reads slow motion where the file tells, and says what it does', async ({ page, app }) => {
    await expect(tiles(page)).toHaveCount(7);
    await picker(page).setInputFiles(slowClip);
    const adding = page.getByRole('dialog', { name: /Add fins-slow-motion/ });
    await expect(
      adding.getByText(/This very clip is on the shelf already: Ansel · kick with fins/),
    ).toBeVisible();
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
    await expect(first.getByText('1 more after this one.')).toBeVisible();
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
    const asking = page.getByRole('dialog', { name: 'Add a clip where it lies' });
    await asking.getByLabel('Path of the file').fill('stick.mp4');
    await asking.getByRole('button', { name: 'Look at it' }).click();
    await expect(asking.getByRole('alert')).toContainText('Give the whole path');
    await asking.getByLabel('Path of the file').fill(`"${outside}"`);
    await asking.getByRole('button', { name: 'Look at it' }).click();
    const adding = page.getByRole('dialog', { name: 'Add on a stick.mp4' });
    await adding.getByLabel('No, true speed').check();
    await adding.getByRole('button', { name: 'Add to the shelf' }).click();
    await expect(page.locator('.bench')).toBeVisible();
    expect(addedSwims(app.library)[0]?.clip.place).toEqual({ kind: 'outside', path: outside });
  });

  test('stops in the middle of sending and leaves nothing behind', async ({ page, app }) => {
    await expect(tiles(page)).toHaveCount(7);
    await picker(page).setInputFiles(plainClip);
    const adding = page.getByRole('dialog', { name: /Add butterfly-together/ });
    await adding.getByLabel('No, true speed').check();
    // a slow disk, so that there is a middle
    const network = await page.context().newCDPSession(page);
    const slow = { offline: false, latency: 0, downloadThroughput: -1, uploadThroughput: 100_000 };
    await network.send('Network.enable');
    await network.send('Network.emulateNetworkConditions', slow);
    await adding.getByRole('button', { name: 'Add to the shelf' }).click();
    const arriving = (): string[] => readdirSync(path.join(app.library, '.arriving'));
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
      /breaks off|not a video|damaged/,
    );
    await page.getByRole('button', { name: 'Go on with the next' }).click();
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
    await page.reload();
  });

  test('names damaged swims and those of a newer version in a sentence each, and shows the others', async ({
    page,
    app,
  }) => {
    await expect(tiles(page)).toHaveCount(5);
    const messages = page.getByRole('region', { name: /can’t be shown/ });
    await expect(messages.getByText(/sample-arms-folded.*damaged/)).toBeVisible();
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
