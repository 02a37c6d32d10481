import { readdirSync, readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from '@playwright/test';
import { parseSwim } from '#core/swim-file/swim-file';
import type { Clip } from '#core/swim-file/swim-schema';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { makeNumberClip } from '#tests/electron/number-clips';
import { expect, test } from './app-fixture';

test.use({ samples: false });

let clips: string;
let hevc: string;
let interlaced: string;
test.beforeAll(async () => {
  clips = await mkdtemp(path.join(tmpdir(), 'submark-any-film-'));
  hevc = path.join(clips, 'phone.mp4');
  await makeNumberClip(hevc, {
    rate: 30,
    pictures: 60,
    options: ['-c:v', 'libx265', '-x265-params', 'log-level=error:bframes=3'],
  });
  interlaced = path.join(clips, 'camcorder.mts');
  await makeNumberClip(interlaced, {
    rate: 50,
    pictures: 400,
    after: 'interlace=scan=tff:lowpass=off',
    options: ['-f', 'mpegts', '-flags', '+ilme+ildct', '-c:v', 'mpeg2video', '-q:v', '3'],
  });
});
test.afterAll(() => rm(clips, { recursive: true, force: true }));

function clipsOf(library: string): Clip[] {
  return readdirSync(path.join(library, 'swims')).map((each) => {
    const parsed = parseSwim(readFileSync(path.join(library, 'swims', each, 'swim.json'), 'utf8'));
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
    return parsed.value.clip;
  });
}

/** Steps forward from the first frame, and reads off which frame's picture is shown. */
async function stepTo(page: Page, frame: number): Promise<void> {
  await expect(page.locator('.stage[data-shown-frame="0"]')).toBeVisible();
  for (let n = 0; n < frame; n++) await page.keyboard.press('ArrowRight');
  await expect(page.locator(`.stage[data-shown-frame="${frame}"]`)).toBeVisible();
}

test('HEVC film is added, copied in the background, stepped through and marked; a kick no human makes is doubted', async ({
  page,
  app,
}) => {
  await page.getByLabel('Clips to add').setInputFiles(hevc);
  const adding = page.getByRole('dialog', { name: 'Add phone.mp4' });
  await expect(adding.getByText(/makes a working copy/)).toBeVisible();
  await expect(adding.getByAltText('Middle of the clip')).toBeVisible();
  await adding.getByLabel('No, true speed').check();
  await adding.getByRole('button', { name: 'Add to the shelf' }).click();
  await stepTo(page, 3);
  await expect(page.getByText(/Stepping through the working copy now/)).toBeVisible();
  const [clip] = clipsOf(app.library);
  expect(clip?.codec).toMatch(/^hvc1|^hev1/);
  expect(tableFromRecord(clip?.frameTimes ?? ({} as never)).starts).toHaveLength(60);
  // two kicks, 0.2 s each as the film plays: 5 a second
  for (const [marked, key] of ['a', 's', 'a', 's', 'a'].entries()) {
    await page.keyboard.press(key);
    await expect(page.locator('.glyph')).toHaveCount(marked + 1);
    for (let n = 0; n < 3; n++) await page.keyboard.press('ArrowRight');
    await expect(page.locator(`.stage[data-shown-frame="${3 * (marked + 2)}"]`)).toBeVisible();
  }
  const doubt = page.locator('.slowdown-notice');
  await expect(doubt).toContainText('These times can’t be right.');
  await expect(doubt).toContainText('5 Hz');
  // the copy is there at once the next time
  await page.getByRole('button', { name: /Shelf/ }).click();
  await expect(page.getByText('Is the slow motion right?')).toBeVisible();
  await page.locator('.swim-tile-open').click();
  await expect(page.locator('.stage[data-shown-frame="0"]')).toBeVisible();
  await expect(page.locator('.copy-notice')).toHaveCount(0);
});

test('interlaced film is stepped through field by field; a copy that was stopped can be made later', async ({
  page,
  app,
}) => {
  await page.getByLabel('Clips to add').setInputFiles(interlaced);
  const adding = page.getByRole('dialog', { name: 'Add camcorder.mts' });
  await expect(adding.getByText(/has 50 frames a second instead of 25/)).toBeVisible();
  await adding.getByLabel('No, true speed').check();
  await adding.getByRole('button', { name: 'Add to the shelf' }).click();
  await page.locator('.copy-notice').getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByText('No working copy was made.')).toBeVisible();
  await page.getByRole('button', { name: 'Make the working copy' }).click();
  await stepTo(page, 5);
  await expect(page.locator('.where')).toContainText('frame 6 of 400');
  await expect(page.locator('.where')).toContainText('0.100 s');
  expect(clipsOf(app.library)[0]).toMatchObject({ fields: true, codec: 'mpeg2video' });
});
