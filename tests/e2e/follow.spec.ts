import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from '@playwright/test';
import { landmarkNames } from '#core/marks/landmark';
import { parseSwim, serialiseSwim } from '#core/swim-file/swim-file';
import type { Swim } from '#core/swim-file/swim-schema';
import { truthSchema } from '../../sample-clips/truth-schema';
import { expect, test } from './app-fixture';
import { brokenRules } from './broken-rules';
import { standingBox, standingCount } from './standing';

const kick = 'sample-streamline-kick';
const butterfly = 'sample-butterfly-together';
const truth = truthSchema.parse(
  JSON.parse(
    readFileSync(fileURLToPath(new URL(`../../sample-clips/truth/${kick}.json`, import.meta.url)), 'utf8'),
  ),
);

const fileOf = (library: string, id: string): string => path.join(library, 'swims', id, 'swim.json');
function swimOf(library: string, id: string): Swim {
  const parsed = parseSwim(readFileSync(fileOf(library, id), 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  return parsed.value;
}
/** Leaves the sample with a body line every 24 pictures (a fifth of a second), no events, and nothing known of its camera. */
function thin(library: string): void {
  const swim = swimOf(library, kick);
  const postures = swim.postures.filter(({ frame }) => frame % 24 === 0 && frame <= 168);
  writeFileSync(fileOf(library, kick), serialiseSwim({ ...swim, postures, events: [], cameraPath: [] }));
}

async function openBench(page: Page, id: string): Promise<void> {
  await page.evaluate((swimId) => {
    window.location.hash = `#/bench/${swimId}`;
  }, id);
  await expect(page.locator('.where-frame')).toContainText('of');
  await expect(page.locator('.where.waiting')).toHaveCount(0);
  // the film is there
  await expect(page.locator('.stage').first()).toHaveAttribute('data-shown-frame', /\d/);
  await page
    .locator('.stage')
    .first()
    .click({ position: { x: 20, y: 20 } });
}

/** The frames a playing loop stands on in turn, until it begins anew. */
const untilItComesRound = (page: Page): Promise<number[]> =>
  page.locator('.where').evaluate(
    (where) =>
      new Promise((resolve) => {
        const frames: number[] = [];
        const watch = new MutationObserver(() => {
          const before = frames.at(-1) ?? -1;
          frames.push(Number(where.getAttribute('data-frame')));
          if (Number(where.getAttribute('data-frame')) >= before) return;
          watch.disconnect();
          resolve(frames);
        });
        watch.observe(where, { attributes: true, attributeFilter: ['data-frame'] });
      }),
  );

test('a coach lays a few lines, follows the points, and accepts what is proposed', async ({ page, app }) => {
  thin(app.library);
  await openBench(page, kick);
  const before = swimOf(app.library, kick);
  await page.keyboard.press('o');
  const panel = page.getByRole('complementary', { name: 'Follow and propose' });
  await expect(panel.getByText('Every stretch between body lines is followed.')).toBeVisible({
    timeout: 120_000,
  });
  const followedPoints = (): number =>
    swimOf(app.library, kick).followed.reduce((sum, { points }) => sum + points.length, 0);
  await expect.poll(followedPoints).toBeGreaterThan(1200);

  // the coach's own points are where they were, and the followed ones are near the truth
  const after = swimOf(app.library, kick);
  expect(after.postures).toEqual(before.postures);
  const length = truth.bodyLengthMetres / truth.metresPerPixel;
  const errors = after.followed.flatMap(({ landmark, frame, points }) =>
    points.map(([x, y], i) => {
      const row = truth.points[frame + i] ?? [];
      const at = 2 * landmarkNames.indexOf(landmark);
      return Math.hypot(x - (row[at] ?? 0), y - (row[at + 1] ?? 0)) / length;
    }),
  );
  const rms = Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / errors.length);
  expect(rms).toBeLessThan(0.01);

  // the background was looked at as well, and the camera stood
  const camera = after.cameraPath.map(({ frames, turned }) => [frames[0], frames.at(-1), turned !== null]);
  expect(camera).toEqual([[0, 168, true]]);

  // proposals are hollow glyphs; no reading uses them until they are accepted
  const hollow = page.locator('[data-proposal]');
  const count = await standingCount(hollow, 5);
  await page.keyboard.press('Shift+O');
  const frequency = page.locator('.readings').getByText('Kick frequency').first();
  const unread = page.getByRole('button', { name: /^Kick frequency not yet/ });
  await expect(unread).toBeVisible();
  await expect(unread).toHaveAttribute('title', /Needs 2 kick top marks/);
  await page.keyboard.press('Shift+O');

  // a hollow glyph goes with the pointer; Escape puts it back, and where it is dropped it is a mark
  const dragged = page.locator('[data-proposal^="kick-top"]').first();
  const proposed = Number((await dragged.getAttribute('data-proposal'))?.split('-').at(-1));
  const carry = async (): Promise<void> => {
    const box = await standingBox(dragged);
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 2 + 9, box.y + box.height / 2, { steps: 3 });
    await expect.poll(async () => (await dragged.boundingBox())?.x).toBeGreaterThan(box.x + 5);
  };
  const where = page.locator('.where');
  await carry();
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect(where).toHaveAttribute('data-frame', String(proposed));
  await expect(hollow).toHaveCount(count);
  await carry();
  await expect.poll(async () => Number(await where.getAttribute('data-frame'))).toBeGreaterThan(proposed);
  const dropped = Number(await where.getAttribute('data-frame'));
  await page.mouse.up();
  await expect(hollow).toHaveCount(count - 1);
  await expect
    .poll(() => swimOf(app.library, kick).events.map(({ kind, frame, refined }) => [kind, frame, refined]))
    .toEqual([['kick-top', dropped, null]]);
  await expect(where).toHaveAttribute('data-frame', String(dropped));
  await page.keyboard.press('Control+z');
  await expect(hollow).toHaveCount(count);
  await expect.poll(() => swimOf(app.library, kick).events).toEqual([]);
  // all away with one key, and all back with one undo
  await page.keyboard.press('Alt+j');
  await expect(hollow).toHaveCount(0);
  await page.keyboard.press('Control+z');
  await expect(hollow).toHaveCount(count);
  expect(after.events).toEqual([]);
  expect(await brokenRules(page)).toEqual([]);
  await page.keyboard.press('p');
  await page.keyboard.press('j');
  await expect(hollow).toHaveCount(count - 1);
  await page.keyboard.press('p');
  await page.keyboard.press('k');
  await page.keyboard.press('Alt+k');
  await expect(hollow).toHaveCount(0);
  await expect.poll(() => swimOf(app.library, kick).events.length).toBe(count - 1);
  const accepted = swimOf(app.library, kick);
  expect(accepted.dismissed).toHaveLength(1);
  for (const event of accepted.events) {
    expect(event.from).toBe('proposal');
    const when = (truth.realTimes[event.frame] ?? 0) + (event.refined?.frames ?? 0) / 120;
    const near = truth.events
      .filter((each) => each.kind === event.kind)
      .map((each) => Math.abs(each.time - when));
    // half a picture at 60 a second
    expect(Math.min(...near)).toBeLessThan(0.0085);
  }
  await page.keyboard.press('Shift+O');
  await expect(frequency).toBeVisible();
  await expect(unread).toHaveCount(0);

  // a follow run is one step: accept-all, accept, reject, follow
  for (let i = 0; i < 4; i++) await page.keyboard.press('Control+z');
  await expect.poll(() => swimOf(app.library, kick).followed.length).toBe(0);
  expect(swimOf(app.library, kick).events).toEqual([]);
  expect(swimOf(app.library, kick).dismissed).toEqual([]);
});

test('a camera that nobody looked at is said to be taken as standing, until it is looked at', async ({
  page,
  app,
}) => {
  const folded = 'sample-arms-folded';
  const known = swimOf(app.library, folded);
  writeFileSync(fileOf(app.library, folded), serialiseSwim({ ...known, cameraPath: [] }));
  await openBench(page, folded);
  const notice = page.locator('.camera-notice');
  await expect(notice).toContainText('Nobody has looked whether the camera moved');
  // the coach's own word is a step like any other
  await notice.getByRole('button', { name: 'It stood still' }).click();
  await expect(notice).toHaveCount(0);
  await page.keyboard.press('Control+z');
  await expect(notice).toContainText('Nobody has looked');
  await notice.getByRole('button', { name: 'Look', exact: true }).click();
  await expect(notice).toHaveCount(0, { timeout: 60_000 });
  const span = known.postures.map(({ frame }) => frame);
  await expect
    .poll(() =>
      swimOf(app.library, folded).cameraPath.map(({ frames, rows }) => [frames[0], frames.at(-1), rows]),
    )
    .toEqual([[Math.min(...span), Math.max(...span), []]]);
  // what was found is no step: nothing of the coach's is there to take back
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
});

test('a camera found to have turned leaves speed unread, unless the coach says that it stood', async ({
  page,
  app,
}) => {
  const folded = 'sample-arms-folded';
  const known = swimOf(app.library, folded);
  const frames = known.postures.map(({ frame }) => frame);
  const run = { frames: [Math.min(...frames), Math.max(...frames)], rows: [], moved: [] };
  writeFileSync(
    fileOf(app.library, folded),
    serialiseSwim({ ...known, cameraPath: [{ ...run, turned: { degrees: 3, zoom: 0 } }] }),
  );
  await openBench(page, folded);
  const notice = page.locator('.camera-notice');
  await expect(notice).toContainText('seems to have turned or zoomed');
  await notice.getByRole('button', { name: 'It stood still' }).click();
  await expect(notice).toHaveCount(0);
  await expect.poll(() => swimOf(app.library, folded).cameraPath).toEqual([{ ...run, turned: null }]);
  await page.keyboard.press('Control+z');
  await expect(notice).toContainText('seems to have turned');
});

test('the guided pass marks a stroke with one key a moment, looping each, with skip and back', async ({
  page,
  app,
}) => {
  // without marks: on one of them the same mark would be chosen instead of made
  const bare = { ...swimOf(app.library, butterfly), events: [] };
  writeFileSync(fileOf(app.library, butterfly), serialiseSwim(bare));
  await openBench(page, butterfly);
  await page.getByRole('slider', { name: 'Scrub through the film' }).fill('90');
  await page.locator('body').press('m');
  const prompt = page.locator('.stage-prompt');
  await expect(prompt).toContainText('1 of 11: hand entry');
  // the loop runs inside half a second around where it began
  await expect(page.getByRole('button', { name: /Stop/ }).first()).toBeVisible();
  for (const shown of await untilItComesRound(page)) expect(Math.abs(shown - 90)).toBeLessThanOrEqual(16);

  await page.locator('body').press('q');
  await expect(prompt).toContainText('2 of 11: kick top');
  await page.locator('body').press('l');
  await expect(prompt).toContainText('3 of 11: kick bottom');
  await page.locator('body').press('Backspace');
  await expect(prompt).toContainText('2 of 11: kick top');
  const keys = ['a', 's', 'w', 'e', 'a', 'r', 't', 's', 'q', 'w'];
  for (const [i, key] of keys.entries()) {
    await expect(prompt).toContainText(`${i + 2} of 11`);
    await page.locator('body').press(key);
  }
  await expect(prompt).toHaveCount(0);
  // M and eleven moments: twelve presses, beside the skip and the step back tried above
  await expect.poll(() => swimOf(app.library, butterfly).events.length).toBe(11);
});

/** Two body lines with points followed between them: an ear lost twice, a toe once. */
function withDoubts(library: string): void {
  const swim = swimOf(library, kick);
  const [first, last] = [0, 48];
  const postures = swim.postures.filter(({ frame }) => frame === first || frame === last);
  const run = (landmark: 'ear' | 'toe', lost: (frame: number) => boolean) => ({
    landmark,
    frame: first + 1,
    points: Array.from({ length: last - first - 1 }, (_, i): [number, number, number] => {
      const row = truth.points[first + 1 + i] ?? [];
      const at = 2 * landmarkNames.indexOf(landmark);
      return [row[at] ?? 0, row[at + 1] ?? 0, lost(first + 1 + i) ? 0.3 : 0.99];
    }),
  });
  const followed = [
    run('ear', (frame) => (frame > 5 && frame < 20) || (frame > 28 && frame < 40)),
    run('toe', (frame) => frame > 12 && frame < 22),
  ];
  writeFileSync(fileOf(library, kick), serialiseSwim({ ...swim, postures, followed, events: [] }));
}

test('a coach answers what is unsure by key: right, hidden and done, each going on to the next', async ({
  page,
  app,
}) => {
  withDoubts(app.library);
  await openBench(page, kick);
  const before = swimOf(app.library, kick);
  const lines = page.getByRole('button', { name: /^Lay the body line|^Lay line/ }).locator('.pad-count');
  const laid = await lines.textContent();
  await page.keyboard.press('u');
  const form = page.getByRole('region', { name: 'Unsure point', exact: true });
  await expect(form).toContainText('1 of 3: ');
  // beside the picture, not over it
  const beside = async (): Promise<boolean> => {
    const [stage, own] = [await standingBox(page.locator('.stage')), await standingBox(form)];
    return own.x >= stage.x + stage.width - 1;
  };
  expect(await beside()).toBe(true);
  expect(await brokenRules(page)).toEqual([]);
  // the ear is hidden, and then hidden until it is seen again; the toe, left for later, is right as it is
  for (let left = 3; left > 1; left--) {
    await expect(form).toContainText(` of ${left}: `);
    await expect(page.locator('.where.waiting')).toHaveCount(0);
    const words = form.locator('strong');
    if ((await words.textContent())?.includes('toe')) {
      await page.keyboard.press('u');
      await expect(words).toContainText('ear');
      await expect(page.locator('.where.waiting')).toHaveCount(0);
    }
    await page.keyboard.press('h');
  }
  await expect(form.locator('strong')).toHaveText(/^toe on frame/);
  await expect(page.locator('.where.waiting')).toHaveCount(0);
  await page.keyboard.press('k');
  await expect(form).toHaveCount(0, { timeout: 60_000 });
  const panel = page.getByRole('complementary', { name: 'Follow and propose' });
  await expect(panel).toContainText('Every stretch between body lines is followed.', { timeout: 60_000 });
  // the toe was kept where it had been followed, and hidden points made no body line
  const saved = (): Swim => swimOf(app.library, kick);
  await expect.poll(() => saved().postures.flatMap(({ hidden }) => hidden)).toEqual(['ear', 'ear']);
  const kept = saved().postures.find(({ points }) => points.toe && !points.ear);
  const [x, y] = before.followed[1]?.points[(kept?.frame ?? 0) - 1] ?? [0, 0, 0];
  expect(kept?.points).toEqual({ toe: { x, y } });
  expect(Number(await lines.textContent())).toBe(Number(laid) + 1);
  // one undo takes one answer back: the following, then the last answer
  const count = (): number => saved().postures.length;
  const all = count();
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect.poll(count).toBe(all - 1);
});

test('the picture stands bare while a key is held, the scene hides by key, and forms stand beside it', async ({
  page,
  app,
}) => {
  await openBench(page, kick);
  expect(app.library).not.toBe('');
  const overlay = page.locator('.stage-overlay');
  await expect(overlay).toHaveCount(1);
  await page.keyboard.down('9');
  await expect(overlay).toHaveCount(0);
  await page.keyboard.up('9');
  await expect(overlay).toHaveCount(1);
  const hide = page.getByRole('button', { name: /^Hide the scene/ });
  await page.keyboard.press('8');
  await expect(hide).toHaveAttribute('aria-pressed', 'true');
  await page.keyboard.press('8');
  await expect(hide).toHaveAttribute('aria-pressed', 'false');
  // both are told on the key sheet
  await page.keyboard.press('?');
  const sheet = page.getByRole('dialog', { name: 'Keys and look' });
  await expect(sheet.getByText('Hold: the picture alone')).toBeVisible();
  await expect(sheet.getByText('Show or hide the scene: level, surface, length')).toBeVisible();
  await page.keyboard.press('Escape');
  await page.keyboard.press('6');
  const form = page.getByRole('form', { name: 'Camera distance' });
  const [stage, own] = [await standingBox(page.locator('.stage')), await standingBox(form)];
  expect(own.x).toBeGreaterThanOrEqual(stage.x + stage.width - 1);
});
