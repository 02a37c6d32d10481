import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Page } from '@playwright/test';
import { type CoachFile, emptyCoach, parseCoach } from '#core/swim-file/coach-file';
import { parseSwim, serialiseSwim } from '#core/swim-file/swim-file';
import type { RemarkingItem } from '#core/uncertainty/remarking-plan';
import { expect, test } from './app-fixture';
import { brokenRules } from './broken-rules';
import { standingBox } from './standing';

const id = 'sample-butterfly-together';
/** Of the sample, in the file's own frames. */
const frameSeconds = 1 / 60;

const coachFile = (library: string): string => path.join(library, 'coach.json');

function keptCoach(library: string): CoachFile {
  const parsed = parseCoach(readFileSync(coachFile(library), 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  return parsed.value;
}

/** What is to be marked again, as the window keeps it; the coach is never shown this. */
const planOf = (page: Page): Promise<RemarkingItem[]> =>
  page.evaluate((key) => JSON.parse(localStorage.getItem(key) ?? '{}').items, `submark-remarking-${id}`);

async function openBench(page: Page): Promise<void> {
  await page.goto(`${new URL(page.url()).origin}/#/bench/${id}`);
  await expect(page.locator('.where')).toBeVisible();
  await expect(page.locator('.where.waiting')).toHaveCount(0);
}

/** Marks the loop's own frame of the first mark, or so many later. */
async function markAgain(page: Page, item: RemarkingItem | undefined, later: number): Promise<void> {
  if (item?.of !== 'event') throw new Error('a moment was expected');
  await expect(page.locator('.remark-bar progress')).toBeVisible();
  const loop = page.getByLabel('Place in the loop');
  await loop.fill(String(Math.min(item.last, item.frame + later)));
  const done = await page.locator('.remark-bar progress').getAttribute('value');
  await page.keyboard.press('Enter');
  await expect(page.locator(`.remark-bar progress[value="${done}"]`)).toHaveCount(0);
}

test('a coach marks again unseen, stops and goes on, and every interval uses what came of it', async ({
  page,
  app,
}) => {
  // every mark waits for its picture; room for a busy machine
  test.setTimeout(240_000);
  // an earlier pass on another swim, in which kick tops were marked too late in turn
  const earlier = Array.from({ length: 9 }, (_, i) => ({
    item: 'kick-top',
    axis: 'time' as const,
    difference: 0.1 * (i % 2),
    frameSeconds,
    of: 'marked' as const,
    on: '2026-05-01T10:00:00.000Z',
    swimId: 'another-swim',
  }));
  writeFileSync(coachFile(app.library), JSON.stringify({ ...emptyCoach, remarkings: earlier }));
  await openBench(page);
  const row = page.locator('[data-reading="down-kick-time"]');
  await page.keyboard.press('Shift+R');
  await page
    .getByRole('region', { name: 'Kick', exact: true })
    .getByRole('button', { name: / more$/ })
    .click();
  await row.getByRole('button', { name: 'About Down-kick time' }).click();
  await expect(row.getByText('assumed', { exact: true })).toBeVisible();
  const spread = row.locator('.spread').first();
  await expect(spread).toHaveText(/\d/);
  const before = (await spread.textContent()) ?? '';

  // the pass: nothing of the first marks is anywhere, neither signs nor counts nor frame numbers
  await page.keyboard.press('Shift+M');
  await page.getByRole('group', { name: 'Moments' }).getByLabel('20', { exact: true }).check();
  await page.getByRole('group', { name: 'Body lines' }).getByLabel('none').check();
  expect(await brokenRules(page)).toEqual([]);
  await page.getByRole('button', { name: 'Start' }).click();
  await expect(page.locator('.stage-prompt')).toContainText(/^Find the .* again/);
  for (const gone of ['.pads', '.score', '.readings', '.where', '[data-event]'])
    await expect(page.locator(gone)).toHaveCount(0);
  await expect(page.locator('.remark')).not.toContainText(/frame \d/);
  expect(await brokenRules(page)).toEqual([]);
  const plan = await planOf(page);
  expect(plan).toHaveLength(20);

  // three marked, one taken back and marked otherwise, one skipped; then stopped for the day
  await markAgain(page, plan[0], 0);
  await markAgain(page, plan[1], 1);
  await page.keyboard.press('Backspace');
  await expect(page.locator('.remark-bar')).toContainText('2 of 20');
  await markAgain(page, plan[1], 0);
  await page.keyboard.press('x');
  await expect(page.locator('.remark-bar')).toContainText('4 of 20');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('heading', { name: 'Your own marking error' })).toBeVisible();
  await expect(page.locator('.remark-page')).toContainText('2 pairs were added');
  await expect
    .poll(() => keptCoach(app.library).remarkings.slice(9))
    .toMatchObject([
      { difference: 0, of: 'marked', swimId: id },
      { difference: 0, of: 'marked', swimId: id },
    ]);

  // another day: what is left goes on where it was
  await page.reload();
  await openBench(page);
  // its words depend on whether a kick top was among the first two
  await page.locator('.readings-foot').getByRole('button').click();
  await expect(page.getByText('A pass was left: 17 still to mark.')).toBeVisible();
  await page.getByRole('button', { name: 'Go on with it' }).click();
  await expect(page.locator('.remark-bar progress')).toBeVisible();
  await expect.poll(async () => (await planOf(page)).length).toBe(17);
  const rest = await planOf(page);
  for (const [i, item] of rest.entries()) await markAgain(page, item, i % 2);
  await expect(page.getByRole('heading', { name: 'Your own marking error' })).toBeVisible();
  await expect.poll(() => keptCoach(app.library).remarkings.length).toBe(9 + 19);
  const kept = keptCoach(app.library).remarkings;
  for (const each of kept.slice(9))
    expect([0, frameSeconds]).toContainEqual(expect.closeTo(each.difference, 3));
  const tops = page.locator('[data-item="kick-top time marked"]');
  await expect(tops).toContainText('measured');
  await expect(tops).toContainText(/ms later/);
  const entries = page.locator('[data-item="entry time marked"]');
  await expect(entries).toContainText('too few to trust: 10 pairs are needed');
  expect(await brokenRules(page)).toEqual([]);

  // used at once, and said of each reading
  await page.getByRole('button', { name: 'Back to the bench' }).click();
  await page.keyboard.press('Shift+R');
  await page
    .getByRole('region', { name: 'Kick', exact: true })
    .getByRole('button', { name: / more$/ })
    .click();
  await row.getByRole('button', { name: 'About Down-kick time' }).click();
  const pairs = kept.filter(({ item }) => item === 'kick-top').length;
  await expect(row.getByText(`partly measured on ${pairs} re-markings, the rest assumed`)).toBeVisible();
  await expect(spread).not.toHaveText(before);
});

test('points are laid again on a bare picture, and each gives its pair along and up', async ({
  page,
  app,
}) => {
  await openBench(page);
  await page.keyboard.press('Shift+M');
  await page.getByRole('group', { name: 'Moments' }).getByLabel('none').check();
  await page.getByRole('button', { name: 'Start' }).click();
  await expect(page.locator('.stage-prompt')).toContainText('Lay the');
  const [item] = await planOf(page);
  if (item?.of !== 'marked') throw new Error('a body line was expected');
  await expect(page.locator('.stage')).toHaveAttribute('data-shown-frame', String(item.frame));
  const box = await standingBox(page.locator('.stage-surface'));
  const scale = Math.min(box.width / 1280, box.height / 720);
  const left = box.x + (box.width - 1280 * scale) / 2;
  const top = box.y + (box.height - 720 * scale) / 2;
  // the first point is hidden this time, the second laid by keyboard, the rest 4 px to the right of the first marks
  await page.keyboard.press('h');
  await page.mouse.move(left + 640 * scale, top + 360 * scale);
  for (const { x, y } of item.points.slice(1))
    await page.mouse.click(left + (x + 4) * scale, top + y * scale);
  await page.keyboard.press('Enter');
  await expect(page.locator('.remark-bar')).toContainText('2 of 10');
  await page.keyboard.press('Escape');
  await expect(page.locator('.remark-page')).toContainText(
    `${2 * (item.points.length - 1)} pairs were added`,
  );
  await expect(() =>
    expect(keptCoach(app.library).remarkings).toHaveLength(2 * (item.points.length - 1)),
  ).toPass();
  const kept = keptCoach(app.library).remarkings;
  expect(kept.some((each) => each.item === item.points[0]?.landmark)).toBe(false);
  for (const { axis, difference, pictureHeight } of kept) {
    // a click lands on a whole screen pixel
    expect(Math.abs(difference - (axis === 'x' ? 4 : 0))).toBeLessThan(1);
    expect(pictureHeight).toBe(720);
  }
});

test('points that were followed are marked by hand unseen, and how far off they were stands in the table', async ({
  page,
  app,
}) => {
  // toes followed on a frame here and there, five pixels to either side in turn of where the coach will say they are
  const file = path.join(app.library, 'swims', id, 'swim.json');
  const parsed = parseSwim(readFileSync(file, 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  const swim = parsed.value;
  const toes = swim.postures.flatMap(({ frame, points: { toe } }) =>
    toe && frame % 20 === 0 ? [{ frame, toe }] : [],
  );
  const followed = toes.slice(1, 13).map(({ frame, toe }, i): (typeof swim.followed)[number] => ({
    landmark: 'toe',
    frame,
    points: [[toe.x + (i % 2 === 0 ? 5 : -5), toe.y, 0.97]],
  }));
  const hidden = new Set(followed.map(({ frame }) => frame));
  const postures = swim.postures.filter(({ frame }) => !hidden.has(frame));
  writeFileSync(file, serialiseSwim({ ...swim, postures, followed }));
  await openBench(page);
  await page.keyboard.press('Shift+M');
  for (const none of ['Moments', 'Body lines'])
    await page.getByRole('group', { name: none }).getByLabel('none').check();
  await page.getByRole('group', { name: 'Followed points' }).getByLabel(`all ${followed.length}`).check();
  await page.getByRole('button', { name: 'Start' }).click();
  await expect(page.locator('.stage-prompt')).toContainText('Lay the toe again');
  for (const item of await planOf(page)) {
    if (item.of !== 'followed') throw new Error('a followed point was expected');
    await expect(page.locator('.stage')).toHaveAttribute('data-shown-frame', String(item.frame));
    const at = toes.find(({ frame }) => frame === item.frame)?.toe ?? { x: 0, y: 0 };
    const box = await standingBox(page.locator('.stage-surface'));
    const scale = Math.min(box.width / 1280, box.height / 720);
    await page.mouse.click(
      box.x + (box.width - 1280 * scale) / 2 + at.x * scale,
      box.y + (box.height - 720 * scale) / 2 + at.y * scale,
    );
    await page.keyboard.press('Enter');
  }
  await expect(page.locator('.remark-page')).toContainText(`${2 * followed.length} pairs were added`);
  // the standard deviation of +5 and −5 in turn is 5.2; a mark's own, by √2, 3.7 px
  const along = page.locator('[data-item="toe x followed"]');
  await expect(along).toContainText(/Toe, along the picture, followed\s*1\d\s*3\.[5-9] px/);
  await expect(page.locator('[data-item="toe y followed"]')).toContainText(/followed\s*1\d\s*0\.\d px/);
  // the followed points themselves are where they were
  const after = parseSwim(readFileSync(file, 'utf8'));
  expect(after.ok && after.value.followed).toEqual(followed);
});
