import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Locator, Page } from '@playwright/test';
import { execa } from 'execa';
import { landmarkNames } from '#core/marks/landmark';
import { parseSwim } from '#core/swim-file/swim-file';
import type { Swim } from '#core/swim-file/swim-schema';
import { truthSchema } from '../../sample-clips/truth-schema';
import { expect, test } from './app-fixture';

const samples = fileURLToPath(new URL('../../sample-clips/', import.meta.url));
const clip = path.join(samples, 'library/swims/sample-butterfly-together/butterfly-together.mp4');
const truth = truthSchema.parse(
  JSON.parse(readFileSync(path.join(samples, 'truth/sample-butterfly-together.json'), 'utf8')),
);
const keys: Readonly<Record<string, string>> = { entry: 'q', exit: 't', 'kick-top': 'a', 'kick-bottom': 's' };

/** Tab until it has the focus, as a coach without a mouse does. */
async function tabTo(page: Page, wanted: Locator): Promise<void> {
  await expect(wanted).toBeVisible();
  for (let n = 0; n < 120; n++) {
    if (await wanted.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`not reached by Tab: ${String(wanted)}`);
}

async function pressMany(page: Page, key: string, times: number): Promise<void> {
  for (let n = 0; n < times; n++) await page.keyboard.press(key);
}

/** Steps to a frame, tens first. */
async function stepTo(page: Page, frame: number): Promise<void> {
  const where = page.locator('.where');
  const now = Number(await where.getAttribute('data-frame'));
  const way = frame > now ? 'ArrowRight' : 'ArrowLeft';
  const apart = Math.abs(frame - now);
  await pressMany(page, `Shift+${way}`, Math.floor(apart / 10));
  await pressMany(page, way, apart % 10);
  await expect(where).toHaveAttribute('data-frame', String(frame));
}

function onlySwim(library: string): Swim {
  const [id] = readdirSync(path.join(library, 'swims'));
  const parsed = parseSwim(readFileSync(path.join(library, 'swims', id ?? '', 'swim.json'), 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  return parsed.value;
}

test.use({ samples: false });

test('from an empty library to a handout without a mouse', async ({ page, app }) => {
  // add a clip and say what was swum
  const chosen = page.waitForEvent('filechooser');
  await tabTo(page, page.locator('.empty-shelf').getByRole('button', { name: 'Add swims…' }));
  await page.keyboard.press('Enter');
  await (await chosen).setFiles(clip);
  const adding = page.getByRole('dialog', { name: /Add butterfly-together/ });
  await expect(adding.getByText('60 a second, constant')).toBeVisible();
  await tabTo(page, adding.getByRole('radio').first());
  await page.keyboard.press('Space');
  await expect(adding.getByLabel('No, true speed')).toBeChecked();
  await tabTo(page, adding.getByLabel('Swimmer'));
  await page.keyboard.type('Rowan');
  await tabTo(page, adding.getByRole('button', { name: 'Add to the shelf' }));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: /Rowan · butterfly/ })).toBeVisible();
  await expect(page.locator('.where-frame')).toHaveText('frame 1 of 252');

  // events on the frames they happen on, and one taken back and given again
  const wanted = truth.events.flatMap(({ kind, time }) => {
    const frame = truth.realTimes.findIndex((at) => at >= time - 1 / 120);
    const key = keys[kind];
    return key && time < 2 ? [{ kind, key, frame }] : [];
  });
  for (const { key, frame } of wanted.sort((a, b) => a.frame - b.frame)) {
    await stepTo(page, frame);
    await page.keyboard.press(key);
    await page.keyboard.press('Escape');
  }
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+Shift+Z');

  // the scene: travel, and a known length by the crosshair
  await tabTo(page, page.getByRole('button', { name: /goes right/ }));
  await page.keyboard.press('Enter');
  await page.keyboard.press('3');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await pressMany(page, 'Shift+ArrowRight', 20);
  await page.keyboard.press('Enter');
  await tabTo(page, page.getByLabel('Metres', { exact: true }));
  await page.keyboard.press('Control+a');
  await page.keyboard.type('2');
  await page.keyboard.press('Enter');

  // a body line: each landmark at the crosshair
  await page.keyboard.press('Escape');
  await page.keyboard.press('b');
  for (const [n] of landmarkNames.entries()) {
    await page.keyboard.press('Enter');
    await pressMany(page, 'Shift+ArrowLeft', n);
    await page.keyboard.press('Enter');
  }
  await page.keyboard.press('Escape');
  await expect
    .poll(() => Object.keys(onlySwim(app.library).postures[0]?.points ?? {}).length)
    .toBe(landmarkNames.length);
  const swim = onlySwim(app.library);
  expect(swim.events.map(({ kind, frame }) => `${kind}@${frame}`).sort()).toEqual(
    wanted.map(({ kind, frame }) => `${kind}@${frame}`).sort(),
  );
  expect(swim.scene.travel).toBe('right');
  const line = swim.scene.scale?.line;
  expect([swim.scene.scale?.metres, line && Math.hypot(line.b.x - line.a.x, line.b.y - line.a.y)]).toEqual([
    2, 200,
  ]);

  // the page to take home
  await page.keyboard.press('Shift+H');
  await expect(page.getByRole('img', { name: /The page as it will print/ })).toHaveAttribute(
    'data-drawn',
    'true',
  );
  await tabTo(page, page.getByLabel('Cue, in your own words'));
  await page.keyboard.type('Feet up as the hands go in');
  await expect(page.locator('.save-state[data-save="saved"]')).toContainText('Saved ');
  await tabTo(page, page.getByRole('checkbox', { name: /consent/ }));
  await page.keyboard.press('Space');
  await tabTo(page, page.getByRole('button', { name: 'Save PDF' }));
  await page.keyboard.press('Enter');
  await expect(page.getByText('handout.pdf')).toBeVisible();
  const exports = path.join(app.library, 'exports');
  const pdf = readdirSync(exports).find((name) => name.endsWith('handout.pdf')) ?? '';
  const words = (await execa('pdftotext', [path.join(exports, pdf), '-'])).stdout.replace(/\s+/g, ' ');
  expect(words).toContain('Rowan');
  expect(words).toContain('Feet up as the hands go in');
});
