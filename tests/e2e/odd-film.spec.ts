import { readdirSync } from 'node:fs';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from '@playwright/test';
import { codeFields, type CodedFrame } from '#tests/browser/harness/field-coded-film';
import { transportStream } from '#tests/browser/harness/transport-stream';
import { makeNumberClip } from '#tests/electron/number-clips';
import { addedSwims } from './added-swims';
import { expect, test } from './app-fixture';

test.use({ samples: false });

let clips: string;
const at = (name: string): string => path.join(clips, name);
const x264 = ['-c:v', 'libx264', '-preset', 'ultrafast', '-g', '30', '-bf', '2'];
test.beforeAll(async () => {
  clips = await mkdtemp(path.join(tmpdir(), 'submark-odd-film-'));
  await makeNumberClip(at('plain.mp4'), { rate: 29.97, pictures: 60, options: x264 });
});
test.afterAll(() => rm(clips, { recursive: true, force: true }));

const adding = (page: Page, name: string) => page.getByRole('dialog', { name: `Add ${name}` });
const pick = (page: Page, ...files: string[]) => page.getByLabel('Clips to add').setInputFiles(files.map(at));
const shown = (page: Page, frame: number) => page.locator(`.stage[data-shown-frame="${frame}"]`);

test('any filming rate can be given when a clip is added, and on the bench', async ({ page, app }) => {
  await pick(page, 'plain.mp4');
  const dialog = adding(page, 'plain.mp4');
  await dialog.getByLabel('Filmed at').fill('239.76');
  await dialog.getByLabel('Filmed at').fill('240');
  await expect(dialog.getByText(/It plays 8.01× slower/)).toBeVisible();
  await dialog.getByRole('button', { name: 'Add to the shelf' }).click();
  await expect(shown(page, 0)).toBeVisible();
  expect(addedSwims(app.library)[0]?.clip.slowdown.factor).toBeCloseTo(240 / 29.97, 6);
  await page.getByRole('button', { name: /card/i }).first().click();
  const card = page.getByRole('dialog', { name: 'Swim card' });
  await expect(card.getByLabel('Filmed at')).toHaveValue('240');
  await card.getByLabel('Filmed at').fill('100000');
  await card.getByRole('button', { name: 'Save', exact: true }).click();
  await expect(card).toHaveCount(0);
  await expect.poll(() => addedSwims(app.library)[0]?.clip.slowdown.factor).toBeCloseTo(100_000 / 29.97, 3);
});

test('what can’t be added is named for what it is, before it is added', async ({ page, app }) => {
  const plain = await readFile(at('plain.mp4'));
  const renamed = (name: string) => Buffer.from(plain.toString('latin1').replaceAll('avc1', name), 'latin1');
  await writeFile(at('new.mp4'), renamed('vvc1'));
  await writeFile(at('dolby.mp4'), renamed('dav1'));
  const key = '0123456789abcdef0123456789abcdef';
  const locked = ['-encryption_scheme', 'cenc-aes-ctr', '-encryption_key', key, '-encryption_kid', key];
  await makeNumberClip(at('locked.mp4'), { rate: 30, pictures: 30, options: [...x264, ...locked] });
  const photo = Buffer.concat([
    Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic', 'latin1'),
    Buffer.alloc(500),
  ]);
  await writeFile(at('photo.heic'), photo);
  for (const [name, words] of [
    ['new.mp4', 'can’t decode VVC'],
    ['dolby.mp4', 'can’t decode AV1 in Dolby Vision'],
    ['locked.mp4', 'is encrypted'],
    ['photo.heic', 'is a photo'],
  ] as const) {
    await pick(page, name);
    await expect(adding(page, name).getByRole('alert')).toContainText(words);
    await page.getByRole('button', { name: 'Close' }).click();
  }
  expect(addedSwims(app.library)).toEqual([]);
  // what had to be sent to be looked at is gone with its card
  await expect.poll(() => readdirSync(path.join(app.library, '.arriving'))).toEqual([]);
});

test('a film of one picture is a still; one that breaks off says what is missing', async ({ page, app }) => {
  await makeNumberClip(at('one.ts'), { rate: 30, pictures: 1, options: x264 });
  await pick(page, 'one.ts');
  await expect(adding(page, 'one.ts').getByText('1: a still picture')).toBeVisible();
  await adding(page, 'one.ts').getByRole('button', { name: 'Add to the shelf' }).click();
  await expect(shown(page, 0)).toBeVisible();
  expect(addedSwims(app.library)[0]?.clip.slowdown).toEqual({ factor: 1, source: 'coach' });
  await page.getByRole('button', { name: /Shelf/ }).click();

  await makeNumberClip(at('whole.mkv'), { rate: 30, pictures: 300, options: x264 });
  const whole = await readFile(at('whole.mkv'));
  await writeFile(at('cut.mkv'), whole.subarray(0, Math.round(whole.length * 0.9)));
  await pick(page, 'cut.mkv');
  const dialog = adding(page, 'cut.mkv');
  await expect(dialog.getByText(/about \d+ pictures are missing/)).toBeVisible();
  const frames = Number(await dialog.locator('dt:text-is("Frames") + dd').textContent());
  const lost = Number(
    /about (\d+)/.exec((await dialog.getByText(/pictures are missing/).textContent()) ?? '')?.[1],
  );
  // the last whole cluster alone would end at 250 at most
  expect(frames).toBeGreaterThan(251);
  // pictures at the break that stand between lost ones are gone too: about as many as are said
  expect(Math.abs(frames + lost - 300)).toBeLessThanOrEqual(2);
});

test('fields that a camcorder codes apart are stepped through to the last', async ({ page, app }) => {
  const frames = [0, 3, 1, 2, 6, 4, 5, 7, 10, 8, 9].map((place): CodedFrame => {
    const role = place === 0 ? 'instant' : [3, 6, 7, 10].includes(place) ? 'reference' : 'leaf';
    return { place, as: 'fields', role };
  });
  const { units } = codeFields({ width: 320, height: 192, first: 'top', frames });
  const pictures = units.map(({ data, frame, field }, n) => ({
    ...{ data, shown: 97_200 + frame.place * 3600 + field * 1800, decoded: 90_000 + n * 1800 },
  }));
  await writeFile(at('camcorder.mts'), transportStream(pictures, { timed: true }));
  await pick(page, 'camcorder.mts');
  const dialog = adding(page, 'camcorder.mts');
  await expect(dialog.getByText(/has 50 frames a second instead of 25/)).toBeVisible();
  await dialog.getByLabel('No, true speed').check();
  await dialog.getByRole('button', { name: 'Add to the shelf' }).click();
  await expect(page.getByText(/Stepping through the working copy now/)).toBeVisible();
  await page.keyboard.press('End');
  await expect(shown(page, 21)).toBeVisible();
  await expect(page.locator('.where')).toContainText('frame 22 of 22');
  expect(addedSwims(app.library)[0]?.clip.fields).toBe(true);
});

test('pictures that a few wrong bytes broke come from ffmpeg, and the copy that patches them up is offered', async ({
  page,
  app,
}) => {
  const bytes = await readFile(at('plain.mp4'));
  const media = bytes.indexOf('mdat', 0, 'latin1');
  for (let n = 0; n < 1500; n++) bytes[media + 40_000 + n] = (n * 37) & 0xff;
  await writeFile(at('flipped.mp4'), bytes);
  await pick(page, 'flipped.mp4');
  await expect(
    adding(page, 'flipped.mp4').getByText(/^\d+ pictures? can’t be decoded by this window/),
  ).toBeVisible();
  await adding(page, 'flipped.mp4').getByLabel('No, true speed').check();
  await adding(page, 'flipped.mp4').getByRole('button', { name: 'Add to the shelf' }).click();
  await expect(shown(page, 0)).toBeVisible();
  for (let frame = 1; frame < 30; frame++) {
    await page.keyboard.press('ArrowRight');
    await expect(shown(page, frame)).toBeVisible();
  }
  await expect(page.locator('.copy-notice')).toContainText(
    /This clip is damaged: at least \d+ pictures? (is|are) broken/,
  );
  await page.getByRole('button', { name: 'Make a working copy' }).click();
  await expect(page.getByText(/Stepping through the working copy now/)).toBeVisible();
  // the copy stands beside the clip: it is still the one swim that was added
  expect(addedSwims(app.library)).toHaveLength(1);
});
