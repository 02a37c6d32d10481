import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { parseSquad } from '#core/swim-file/squad-file';
import { parseSwim } from '#core/swim-file/swim-file';
import type { Scene } from '#core/swim-file/swim-schema';
import { expect, test } from './app-fixture';
import { brokenRules } from './broken-rules';
import { frameShown } from './frame-shown';
import { standingBox } from './standing';

const id = 'sample-butterfly-together';
/** Looking over a whole bench for broken rules takes seconds; room for a busy machine. */
test.setTimeout(180_000);

/** What a reading says, once it says a number. */
async function numberOf(reading: Locator): Promise<number> {
  await expect(reading).toHaveAttribute('data-value', /\d/);
  return Number(await reading.getAttribute('data-value'));
}

async function openBench(page: Page): Promise<void> {
  await page.goto(`${new URL(page.url()).origin}/#/bench/${id}`);
  await expect(page.locator('.where')).toBeVisible();
  await expect(page.locator('.where.waiting')).toHaveCount(0);
}

function targetsOf(library: string) {
  const parsed = parseSquad(readFileSync(path.join(library, 'squad.json'), 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  return parsed.value.swimmers.find((each) => each.id === 'pip')?.targets ?? [];
}

function sceneOf(library: string): Scene {
  const parsed = parseSwim(readFileSync(path.join(library, 'swims', id, 'swim.json'), 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  return parsed.value.scene;
}

test('a coach sets a target from a reading, and it is met, missed, or can’t be told', async ({
  page,
  app,
}) => {
  await openBench(page);
  const row = page.locator('[data-reading="stroke-rate"]');
  await page.keyboard.press('Shift+R');
  const value = await numberOf(row);
  await row.getByRole('button', { name: 'About Stroke rate' }).click();
  await expect(row.locator('[data-drawing="stroke-rate"]')).toBeVisible();
  const set = async (low: string, high: string): Promise<void> => {
    await row.getByLabel('at least').fill(low);
    await row.getByLabel('at most').fill(high);
    await row.getByRole('button', { name: 'Set', exact: true }).click();
  };
  await set('60', '50');
  await expect(row.getByRole('alert')).toContainText('The lower end is above the upper one.');
  await set('60', '');
  await expect(row.locator('.reading-met')).toHaveText('target at least 60: not met');
  await set('', value.toFixed(1));
  await expect(row.locator('.reading-met')).toContainText('can’t tell');
  await set('50', '56,5');
  await expect(row.locator('.reading-met')).toHaveText('target 50 to 56.5: met');
  await expect
    .poll(() => targetsOf(app.library).filter(({ reading }) => reading === 'stroke-rate'))
    .toMatchObject([{ low: 50, high: 56.5, from: expect.stringMatching(/^\d{4}-\d\d-\d\d$/) }]);
  expect(await brokenRules(page)).toEqual([]);

  // the other question has its own interval, and says where it can't be answered
  const spread = row.locator('.spread').first();
  await expect(spread).toHaveText(/\d/);
  const ofSwim = await spread.textContent();
  await page.getByRole('button', { name: 'this swimmer' }).click();
  await expect(spread).not.toHaveText(ofSwim ?? '');
  await expect(page.locator('[data-reading="knee-angle"]')).toContainText('± of this swim');

  // time under water is never a thing to beat; a reading that isn't there yet is found all the same
  await page.keyboard.press('/');
  await page.keyboard.type('underwater part, time');
  await expect(
    page.locator('[data-reading="underwater-time"]').getByRole('button', { name: /^About/ }),
  ).toHaveCount(1);
  await page
    .locator('[data-reading="underwater-time"]')
    .getByRole('button', { name: /^About/ })
    .click();
  await expect(page.locator('[data-reading="underwater-time"]')).toContainText(
    'must never become a thing to beat',
  );

  // the swimmer's own dialog has it too, and gives it up; what was aimed at stays as the history
  await page.getByRole('button', { name: '‹ Shelf' }).click();
  await page.getByRole('button', { name: 'About Pip' }).click();
  const dialog = page.getByRole('dialog', { name: 'Pip' });
  await expect(dialog).toContainText('Stroke rate: 50 to 56.5');
  await dialog.getByRole('button', { name: 'Give up Kick 1 with hand entry' }).click();
  await dialog.getByRole('button', { name: 'Save', exact: true }).click();
  await expect(dialog).toHaveCount(0);
  await expect
    .poll(() => targetsOf(app.library).filter(({ reading }) => reading === 'kick1-top-to-entry'))
    .toMatchObject([
      { low: -40, high: 40, from: null },
      { low: null, high: null },
    ]);
});

test('strokes lie over one another, and every curve leads to its frames', async ({ page, app }) => {
  expect(app.library).not.toBe('');
  await openBench(page);
  await page.keyboard.press('Shift+R');
  await page.keyboard.press('l');
  const laid = page.getByRole('region', { name: 'Score, strokes over one another' });
  await expect(laid.getByRole('button', { name: /^catch, stroke/ })).toHaveCount(3);
  await expect(laid).toContainText('3 strokes over one another, mean ± SD');
  await laid.getByRole('button', { name: /^catch, stroke 2/ }).focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => frameShown(page)).toBeGreaterThan(0);
  const caught = await frameShown(page);
  await page.getByLabel('Which strokes').selectOption('breathing');
  await expect(laid.getByRole('button', { name: /^catch, stroke/ })).toHaveCount(2);
  expect(await brokenRules(page)).toEqual([]);

  await page.keyboard.press('l');
  const plots = page.getByRole('region', { name: 'Plots' });
  await expect(plots.getByRole('img', { name: /^Undulation along the body: fingertip/ })).toBeVisible();
  for (const [name, label] of [
    ['Speed', /^Speed of the whole body against time, mean 1\.\d+ m\/s, with 1\d kick marks/],
    ['Knee and hip angle', /^Knee and hip angle over the stroke/],
    ['Toe and hip height', /^Height of hip and toe against time/],
  ] as const) {
    await plots.getByRole('button', { name, exact: true }).click();
    await expect(plots.getByRole('img', { name: label })).toBeVisible();
  }
  expect(await brokenRules(page)).toEqual([]);

  // the cut-off is the coach's choice, the legend says which, and the readings, which use no filter, stay
  await plots.getByRole('button', { name: 'Speed', exact: true }).click();
  const lowPass = plots.getByRole('group', { name: 'Low-pass of the speed' });
  const variation = page.locator('[data-reading="speed-variation"]');
  const unfiltered = await variation.getAttribute('data-value');
  await expect(plots.locator('.plot-legend')).toContainText('low-pass 6.0 Hz');
  const suggested = lowPass.getByRole('button', { name: /by this trace$/ });
  const hertz = (await suggested.textContent())?.split(',')[0] ?? 'none';
  await suggested.click();
  await expect(suggested).toHaveAttribute('aria-pressed', 'true');
  await expect(plots.locator('.plot-legend')).toContainText(`low-pass ${hertz}`);
  await expect(plots.locator('.plot-legend')).not.toContainText('low-pass 6.0 Hz');
  await lowPass.getByRole('button', { name: '6 Hz, usual' }).click();
  await expect(plots.locator('.plot-legend')).toContainText('low-pass 6.0 Hz');
  await expect(variation).toHaveAttribute('data-value', unfiltered ?? '');
  await plots.getByRole('button', { name: 'Toe and hip height', exact: true }).click();

  // a click on the plot goes to the frame of the nearest point
  const box = await standingBox(plots.locator('svg.plot'));
  await page.mouse.move(box.x + box.width * 0.5, box.y + box.height * 0.4);
  await page.mouse.move(box.x + box.width * 0.5 + 2, box.y + box.height * 0.4);
  await page.mouse.click(box.x + box.width * 0.5 + 2, box.y + box.height * 0.4);
  await expect.poll(() => frameShown(page)).not.toBe(caught);
  const there = await frameShown(page);
  // half way along an axis of 0 to 4.2 s at 60 a second, give or take the next body line
  expect(Math.abs(there - 125)).toBeLessThan(16);

  // by keyboard from point to point, and as numbers
  await plots.getByLabel('point by point').focus();
  await page.keyboard.press('End');
  await expect.poll(() => frameShown(page)).toBeGreaterThan(there);
  await page.keyboard.press('Home');
  await expect.poll(() => frameShown(page)).toBeLessThan(there);
  const first = await frameShown(page);
  await plots.getByRole('button', { name: 'Numbers' }).click();
  await expect(plots.getByRole('columnheader')).toHaveText(['Time, s', 'Hip, m', 'Toe, m']);
  await plots.getByRole('row').nth(5).getByRole('button').click();
  await expect.poll(() => frameShown(page)).toBeGreaterThan(first);
  expect(await brokenRules(page)).toEqual([]);
});

test('rectangle, straight lines and camera distance are drawn, kept, and taken back', async ({
  page,
  app,
}) => {
  await openBench(page);
  const before = sceneOf(app.library);
  const amplitude = page.locator('[data-reading="kick-amplitude-toe"]');
  const value = async (): Promise<number> => Number(await amplitude.getAttribute('data-value'));
  const plain = await numberOf(amplitude);
  const box = await standingBox(page.locator('.stage-surface'));
  const click = (x: number, y: number): Promise<void> =>
    page.mouse.click(box.x + box.width * x, box.y + box.height * y);

  await page.keyboard.press('4');
  // beside the picture, where the stage is black, nothing is marked
  await click(0.005, 0.5);
  await expect(page.getByText('That is outside the picture: nothing is marked there')).toBeVisible();
  await expect(page.locator('.stage-prompt')).toContainText('Corner 1 of 4');
  await click(0.3, 0.3);
  await click(0.6, 0.3);
  await page.keyboard.press('Backspace');
  await expect(page.locator('.stage-prompt')).toContainText('Corner 2 of 4');
  await click(0.62, 0.28);
  await click(0.62, 0.6);
  await click(0.3, 0.6);
  await page.getByLabel('along the pool, metres').fill('2,5');
  await page.getByLabel('up and down, metres').fill('1.2');
  expect(await brokenRules(page)).toEqual([]);
  await page.keyboard.press('Enter');
  await expect.poll(value).not.toBeCloseTo(plain, 4);
  const rectangle = await value();

  await page.keyboard.press('5');
  for (const [x, y] of [
    [0.2, 0.8],
    [0.5, 0.81],
    [0.8, 0.8],
  ] as const)
    await click(x, y);
  await page.keyboard.press('5');
  await expect(page.locator('.stage-prompt')).toContainText('1 kept.');
  await page.keyboard.press('Escape');

  // a point of a straight line is dragged, moved by key, and taken back; dragged out, it stops at the picture's edge
  const middle = () => sceneOf(app.library).straights[0]?.[1];
  await expect.poll(middle).toBeDefined();
  const laid = middle();
  const drag = async (x: number, y: number): Promise<void> => {
    await page.mouse.move(box.x + box.width * 0.5, box.y + box.height * 0.81);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * x, box.y + box.height * y, { steps: 3 });
    await page.mouse.up();
  };
  await drag(0.52, 0.9);
  await expect.poll(() => (middle()?.y ?? 0) - (laid?.y ?? 0)).toBeGreaterThan(30);
  const dragged = middle();
  await page.keyboard.press('ArrowUp');
  await expect.poll(() => (dragged?.y ?? 0) - (middle()?.y ?? 0)).toBeCloseTo(1, 6);
  for (let i = 0; i < 2; i++) await page.keyboard.press('Control+z');
  await expect.poll(middle).toEqual(laid);
  await drag(0.999, 0.81);
  await expect.poll(() => middle()?.x).toBe(1280);
  await page.keyboard.press('Control+z');
  await expect.poll(middle).toEqual(laid);

  await page.keyboard.press('6');
  await page.getByLabel('camera to the known length, metres').fill('5');
  await page.getByLabel('from the known length on to the swimmer, metres').fill('1.25');
  // 5 / 6.25 − 1
  await expect(page.getByRole('form', { name: 'Camera distance' })).toContainText(
    'lengths would read −20.0 %',
  );
  await page.keyboard.press('Enter');
  await expect
    .poll(() => sceneOf(app.library))
    .toMatchObject({
      plane: { alongMetres: 2.5, upMetres: 1.2 },
      straights: [[{}, {}, {}]],
      camera: { metres: 5, fartherMetres: 1.25 },
    });

  for (let i = 0; i < 2; i++) await page.keyboard.press('Control+z');
  await expect.poll(value).toBeCloseTo(rectangle, 9);
  await page.keyboard.press('Control+z');
  await expect.poll(value).toBeCloseTo(plain, 9);
  await expect.poll(() => sceneOf(app.library)).toEqual(before);
});
