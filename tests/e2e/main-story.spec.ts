import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { createCanvas, loadImage } from '@napi-rs/canvas';
import type { Page } from '@playwright/test';
import { landmarkNames } from '#core/marks/landmark';
import { parseSwim } from '#core/swim-file/swim-file';
import type { Swim } from '#core/swim-file/swim-schema';
import { readPictureNumber } from '../../sample-clips/picture-number';
import { truthSchema } from '../../sample-clips/truth-schema';
import { expect, test } from './app-fixture';
import { standingBox } from './standing';

const samples = fileURLToPath(new URL('../../sample-clips/', import.meta.url));
const clip = path.join(samples, 'library/swims/sample-butterfly-together/butterfly-together.mp4');
const truth = truthSchema.parse(
  JSON.parse(readFileSync(path.join(samples, 'truth/sample-butterfly-together.json'), 'utf8')),
);
const frameOf = (time: number): number =>
  truth.realTimes.reduce(
    (best, each, i) => (Math.abs(each - time) < Math.abs((truth.realTimes[best] ?? 0) - time) ? i : best),
    0,
  );

async function goTo(page: Page, frame: number): Promise<void> {
  await page.getByRole('slider', { name: 'Scrub through the film' }).fill(String(frame));
  await expect(page.locator('.where')).toHaveAttribute('data-frame', String(frame));
  await expect(page.locator('.where.waiting')).toHaveCount(0);
}

/** Where a point of the shown picture is on the screen, with the whole picture in view. */
async function onScreen(page: Page, x: number, y: number): Promise<[number, number]> {
  const box = await standingBox(page.locator('.stage-surface'));
  const scale = Math.min(box.width / 1280, box.height / 720);
  return [
    box.x + (box.width - 1280 * scale) / 2 + x * scale,
    box.y + (box.height - 720 * scale) / 2 + y * scale,
  ];
}

function addedSwim(library: string): Swim {
  const id = readdirSync(path.join(library, 'swims')).find((each) => !each.startsWith('sample-'));
  const parsed = parseSwim(readFileSync(path.join(library, 'swims', id ?? '', 'swim.json'), 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  return parsed.value;
}

test('a coach adds a clip, steps, marks, measures, saves a still, and finds all of it again', async ({
  page,
  app,
}) => {
  await expect(page.locator('.swim-tile-open', { hasText: 'Kick 1 with hand entry' }).first()).toBeVisible();

  // add: facts are read from the container, the card is filled, the new swimmer joins the squad
  await page.getByLabel('Clips to add').setInputFiles(clip);
  const adding = page.getByRole('dialog', { name: /Add butterfly-together/ });
  await expect(adding.getByText('1280 × 720')).toBeVisible();
  await expect(adding.getByText('252', { exact: true })).toBeVisible();
  await expect(adding.getByText('60 a second, constant')).toBeVisible();
  await adding.getByLabel('No, true speed').check();
  await adding.getByLabel('Swimmer').fill('Rowan');
  await adding.getByLabel('Effort').selectOption('full');
  await adding.getByRole('button', { name: 'Add to the shelf' }).click();
  await expect(page.getByRole('heading', { name: /Rowan · butterfly/ })).toBeVisible();
  await expect(page.locator('.where-frame')).toHaveText('frame 1 of 252');

  // step both ways by keyboard
  await page
    .locator('.stage')
    .first()
    .click({ position: { x: 20, y: 20 } });
  await page.keyboard.press('Home');
  for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowRight');
  await expect(page.locator('.where-frame')).toHaveText('frame 6 of 252');
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('ArrowLeft');
  await expect(page.locator('.where-frame')).toHaveText('frame 15 of 252');

  // mark what the truth says happens, by key, on the nearest frame
  const keys: Readonly<Record<string, string>> = {
    entry: 'q',
    exit: 't',
    'kick-top': 'a',
    'kick-bottom': 's',
  };
  const wanted = truth.events.filter((each) => each.kind in keys && each.time < 2.6);
  for (const event of wanted) {
    await goTo(page, frameOf(event.time));
    await page.locator('body').press(keys[event.kind] ?? '');
  }
  const panel = page.getByRole('complementary', { name: 'Readings' });
  await expect(panel.getByText('Kick 1 with hand entry').first()).toBeVisible();

  // undo and redo the last mark
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+Shift+Z');

  // scene: the way they go, and a known length drawn with the mouse
  await page.getByRole('button', { name: /goes right/ }).click();
  await page.locator('body').press('3');
  const pixels = 3 / truth.metresPerPixel;
  await page.mouse.move(...(await onScreen(page, 300, 500)));
  await page.mouse.down();
  await page.mouse.move(...(await onScreen(page, 500, 500)));
  await page.mouse.move(...(await onScreen(page, 300 + pixels, 500)));
  await page.mouse.up();
  await page.getByLabel('Metres', { exact: true }).fill('3');
  await page.getByRole('button', { name: 'Set the length' }).click();

  // a body line of nine landmarks by mouse, on the picture shown
  await goTo(page, 60);
  await page.locator('body').press('b');
  const laid = landmarkNames.map((name, i) => ({
    name,
    x: truth.points[60]?.[2 * i] ?? 0,
    y: truth.points[60]?.[2 * i + 1] ?? 0,
  }));
  for (const { x, y } of laid) await page.mouse.click(...(await onScreen(page, x, y)));
  await page.keyboard.press('Escape');

  await expect.poll(() => Object.keys(addedSwim(app.library).postures[0]?.points ?? {}).length).toBe(9);
  expect(addedSwim(app.library).events.length).toBe(wanted.length);
  const saved = addedSwim(app.library);
  expect(saved.card.swimmerName).toBe('Rowan');
  expect(saved.scene.travel).toBe('right');
  expect(saved.events.map((each) => `${each.kind}@${each.frame}`).sort()).toEqual(
    wanted.map((each) => `${each.kind}@${frameOf(each.time)}`).sort(),
  );

  const posture = saved.postures.find((each) => each.frame === 60);
  for (const { name, x, y } of laid) {
    // a mouse is placed to one screen pixel, which is about one and a half of the picture's
    expect(Math.abs((posture?.points[name]?.x ?? Number.NaN) - x)).toBeLessThan(3);
    expect(Math.abs((posture?.points[name]?.y ?? Number.NaN) - y)).toBeLessThan(3);
  }
  const line = saved.scene.scale?.line;
  expect(saved.scene.scale?.metres).toBe(3);
  expect(
    Math.abs(Math.hypot((line?.b.x ?? 0) - (line?.a.x ?? 0), (line?.b.y ?? 0) - (line?.a.y ?? 0)) - pixels),
  ).toBeLessThan(5);

  // a still at full picture size, of the very frame shown
  await goTo(page, 40);
  await page.getByRole('button', { name: 'Still', exact: true }).click();
  const still = page.getByRole('dialog', { name: 'Still of frame 41' });
  // a swimmer of a moment ago has no consent on record
  await still.getByRole('checkbox', { name: /consent/i }).check();
  await still.getByRole('button', { name: /save/i }).click();
  await expect
    .poll(() => readdirSync(path.join(app.library, 'exports')).filter((each) => each.endsWith('.png')).length)
    .toBe(1);
  const name = readdirSync(path.join(app.library, 'exports')).find((each) => each.endsWith('.png')) ?? '';
  const picture = await loadImage(path.join(app.library, 'exports', name));
  expect([picture.width, picture.height]).toEqual([1280, 720]);
  const canvas = createCanvas(1280, 720);
  const context = canvas.getContext('2d');
  context.drawImage(picture, 0, 0);
  expect(readPictureNumber(context.getImageData(0, 0, 1280, 720).data, 1280, 720)).toBe(40);
  await page.keyboard.press('Escape');

  // close, reopen: all is there
  await page.reload();
  await expect(page.getByRole('heading', { name: /Rowan · butterfly/ })).toBeVisible();
  await expect(panel.getByText('Kick 1 with hand entry').first()).toBeVisible();
  expect(addedSwim(app.library).events.length).toBe(wanted.length);
  await page.getByRole('button', { name: /Shelf/ }).click();
  await expect(page.getByRole('heading', { name: /Rowan/ })).toBeVisible();
});

for (const [name, bytes, words] of [
  ['empty.mp4', Buffer.alloc(0), /is empty/],
  ['letter.mp4', Buffer.from('Dear coach, this is no film.'), /not a video/],
] as const)
  test(`says what is wrong with ${name} and adds nothing`, async ({ page, app }) => {
    await expect(
      page.locator('.swim-tile-open', { hasText: 'Kick 1 with hand entry' }).first(),
    ).toBeVisible();
    await page.getByLabel('Clips to add').setInputFiles({ name, mimeType: 'video/mp4', buffer: bytes });
    await expect(page.getByRole('alert')).toContainText(words);
    await page.getByRole('button', { name: 'Close' }).click();
    expect(readdirSync(path.join(app.library, 'swims')).every((each) => each.startsWith('sample-'))).toBe(
      true,
    );
  });
