import { readdirSync, readFileSync } from 'node:fs';
import { cp, mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { createCanvas, loadImage } from '@napi-rs/canvas';
import { execa } from 'execa';
import webvtt from 'webvtt-parser';
import { parseHandout } from '#core/handout/handout-file';
import { parseSquad } from '#core/swim-file/squad-file';
import { parseSwim } from '#core/swim-file/swim-file';
import type { Swim } from '#core/swim-file/swim-schema';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { readPictureNumber } from '../../sample-clips/picture-number';
import { expect, test } from './app-fixture';
import { brokenRules } from './broken-rules';

const swimId = 'sample-butterfly-together';

function swimIn(library: string): Swim {
  const parsed = parseSwim(readFileSync(path.join(library, 'swims', swimId, 'swim.json'), 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  return parsed.value;
}

const exported = (library: string, pattern: RegExp): string => {
  const names = readdirSync(path.join(library, 'exports')).filter((name) => pattern.test(name));
  if (names.length !== 1) throw new Error(`${pattern} should be one of: ${names.join(', ')}`);
  return path.join(library, 'exports', names[0] ?? '');
};

/** A JSON text's numbers in order, and everything else of it. */
function numbersApart(text: string): { readonly numbers: readonly number[]; readonly rest: unknown } {
  const numbers: number[] = [];
  const rest: unknown = JSON.parse(text, (_key, value: unknown) => {
    if (typeof value !== 'number') return value;
    numbers.push(value);
    return 'a number';
  });
  return { numbers, rest };
}

async function numberIn(file: string): Promise<number | null> {
  const image = await loadImage(file);
  const canvas = createCanvas(image.width, image.height);
  const paper = canvas.getContext('2d');
  paper.drawImage(image, 0, 0);
  const { data } = paper.getImageData(0, 0, image.width, image.height);
  return readPictureNumber(data, image.width, image.height);
}

test('a coach exports pictures, data and the swim, and outside tools read what the stage showed', async ({
  page,
  app,
}) => {
  // eleven files, a command line and a zip tool: long on a busy machine
  test.slow();
  await page.goto(`${new URL(page.url()).origin}/#/bench/${swimId}`);
  await expect(page.locator('.where')).toBeVisible();
  await page.keyboard.press('Shift+X');
  const dialog = page.getByRole('dialog', { name: 'Export' });
  await dialog.getByLabel('Frames').fill('63, 71-72');
  for (const part of [
    /^Contact sheet/,
    /^Posture fan/,
    /^Readings CSV/,
    /^Events CSV/,
    /^Landmarks/,
    /^Readings, in full/,
    /^Events as captions/,
    /^Swim bundle/,
  ])
    await dialog.getByRole('checkbox', { name: part }).check();
  expect(await brokenRules(page, 'dialog[open]')).toEqual([]);
  await dialog.getByRole('button', { name: 'Save 11 files' }).click();
  await expect(dialog.getByText('Saved, 11 files')).toBeVisible({ timeout: 60_000 });

  const { library } = app;
  const swim = swimIn(library);
  const table = tableFromRecord(swim.clip.frameTimes);
  // the stills are the frames asked for: each picture carries its own number
  for (const frame of [63, 71, 72])
    expect(await numberIn(exported(library, new RegExp(`still - frame ${frame}\\.png$`)))).toBe(frame - 1);

  const captions = new webvtt.WebVTTParser().parse(
    readFileSync(exported(library, /events\.vtt$/), 'utf8'),
    'captions',
  );
  expect(captions.errors).toEqual([]);
  const frames = [...new Set(swim.events.map((mark) => mark.frame))].sort((a, b) => a - b);
  expect(captions.cues).toHaveLength(frames.length);
  captions.cues.forEach((cue, index) => {
    const start = (table.starts[frames[index] ?? 0] ?? 0) / table.ticksPerSecond;
    // written in whole milliseconds, rounded up
    expect(cue.startTime - start).toBeGreaterThan(-1e-9);
    expect(cue.startTime - start).toBeLessThan(0.001 + 1e-9);
  });

  const rows = (pattern: RegExp): number =>
    readFileSync(exported(library, pattern), 'utf8').trimEnd().split('\r\n').length - 1;
  expect(rows(/events\.csv$/)).toBe(swim.events.length);
  expect(rows(/landmarks\.csv$/)).toBe(
    swim.postures.reduce((sum, { points, hidden }) => sum + Object.keys(points).length + hidden.length, 0),
  );
  const command = await execa('npm', [
    'run',
    '-s',
    'readings',
    '--',
    path.join(library, 'swims', swimId),
    '--json',
  ]);
  const saved = numbersApart(readFileSync(exported(library, /readings\.json$/), 'utf8'));
  const printed = numbersApart(command.stdout);
  expect(saved.rest).toEqual(printed.rest);
  // two JavaScript engines differ in the last digits of sines and logarithms
  saved.numbers.forEach((value, index) => {
    const other = printed.numbers[index] ?? Number.NaN;
    expect(Math.abs(value - other)).toBeLessThanOrEqual(1e-7 * Math.abs(other) + 1e-12);
  });

  // the bundle is tested by another zip tool, then dropped on the shelf of the same library: both are kept
  const zip = exported(library, /swim\.zip$/);
  expect((await execa('unzip', ['-tq', zip])).stdout).toMatch(/No errors detected/);
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: '‹ Shelf' }).click();
  const tiles = page.locator('.swim-tile-open');
  await expect(tiles.first()).toBeVisible();
  await page.getByLabel('Clips to add').setInputFiles(zip);
  const arrived = page.getByRole('dialog', { name: /Pip · butterfly/ });
  await expect(arrived.getByText('on the shelf already, with the same marks')).toBeVisible();
  await arrived.getByRole('button', { name: 'Add to the shelf' }).click();
  await expect.poll(() => readdirSync(path.join(library, 'swims')).length).toBe(8);
});

test('a coach makes the handout: preview, PNG and PDF are one page, kept with the swim and undone', async ({
  page,
  app,
}) => {
  const { library } = app;
  await page.goto(`${new URL(page.url()).origin}/#/handout/${swimId}`);
  const preview = page.getByRole('img', { name: /The page as it will print/ });
  await expect(preview).toHaveAttribute('data-drawn', 'true');
  const cue = page.getByLabel('Cue, in your own words');
  await cue.fill('Żółw Ψ Юла: kick, then hands');
  await cue.press('Enter');
  await page.getByRole('radio', { name: 'Letter' }).check();
  expect(await brokenRules(page)).toEqual([]);

  const kept = (): unknown => {
    const parsed = parseHandout(readFileSync(path.join(library, 'swims', swimId, 'handout.json'), 'utf8'));
    return parsed.ok ? [parsed.value.cue, parsed.value.paper] : parsed.fault;
  };
  await expect(page.locator('.save-state[data-save="saved"]')).toContainText('Saved ');
  await expect(() => expect(kept()).toEqual(['Żółw Ψ Юла: kick, then hands', 'letter'])).toPass();
  await page.locator('h1').click();
  await page.keyboard.press('Control+z');
  await expect(page.getByRole('radio', { name: 'A4' })).toBeChecked();
  /** Waits until the preview is of a paper so many millimetres high and wide, and drawn. */
  const previewIs = async (height: number, width: number): Promise<void> => {
    const shape = (): Promise<number> =>
      preview.evaluate((canvas: HTMLCanvasElement) => canvas.height / canvas.width);
    await expect.poll(shape).toBeCloseTo(height / width, 2);
    await expect(preview).toHaveAttribute('data-drawn', 'true');
  };
  await previewIs(297, 210);

  await page.getByRole('button', { name: 'Save PDF' }).click();
  await expect(page.getByText('handout.pdf')).toBeVisible();
  await page.getByRole('button', { name: 'Save PNG' }).click();
  await expect(page.getByText('handout.png')).toBeVisible();
  await expect.poll(kept).toEqual(['Żółw Ψ Юла: kick, then hands', 'a4']);

  const pdf = exported(library, /handout\.pdf$/);
  const facts = (await execa('pdfinfo', [pdf])).stdout;
  expect(facts).toMatch(/Pages:\s+1\n/);
  expect(facts).toMatch(/Page size:\s+595\.28 x 841\.89 pts \(A4\)/);
  const words = (await execa('pdftotext', [pdf, '-'])).stdout.replace(/\s+/g, ' ');
  for (const expected of [
    'Żółw Ψ Юла: kick, then hands',
    'Pip',
    'Butterfly, steady',
    'On target',
    'Kick 1 with hand entry',
  ])
    expect(words).toContain(expected);
  expect((await execa('pdffonts', [pdf])).stdout).not.toMatch(/ no +(yes|no) +(yes|no) +\d/);

  // the page as another program draws it is the page as it was saved, and as it was seen
  const raster = path.join(library, 'handout-page');
  const asDrawnOutside = async (file: string | Buffer): Promise<number> => {
    const { width, height } = await loadImage(file);
    const size = ['-scale-to-x', String(width), '-scale-to-y', String(height)];
    await execa('pdftoppm', [...size, '-png', '-singlefile', pdf, raster]);
    return meanDifference(await blocks(`${raster}.png`), await blocks(file));
  };
  expect(await asDrawnOutside(exported(library, /handout\.png$/))).toBeLessThan(2);
  const seen = await preview.evaluate((canvas: HTMLCanvasElement) => canvas.toDataURL('image/png'));
  expect(await asDrawnOutside(Buffer.from(seen.split(',')[1] ?? '', 'base64'))).toBeLessThan(2);
  // another page would not pass
  await page.getByRole('radio', { name: 'Letter' }).check();
  await previewIs(279.4, 215.9);
  const other = await preview.evaluate((canvas: HTMLCanvasElement) => canvas.toDataURL('image/png'));
  expect(await asDrawnOutside(Buffer.from(other.split(',')[1] ?? '', 'base64'))).toBeGreaterThan(5);
});

/** Means of the greys in blocks of eight by eight pixels: how edges are smoothed does not count. */
async function blocks(file: string | Buffer): Promise<readonly number[]> {
  const image = await loadImage(file);
  const { width, height } = image;
  const canvas = createCanvas(width, height);
  const paper = canvas.getContext('2d');
  paper.drawImage(image, 0, 0);
  const { data } = paper.getImageData(0, 0, width, height);
  const across = Math.floor(width / 8);
  const sums = new Array<number>(across * Math.floor(height / 8)).fill(0);
  for (let y = 0; y < Math.floor(height / 8) * 8; y++)
    for (let x = 0; x < across * 8; x++) {
      const at = 4 * (y * width + x);
      const block = Math.floor(y / 8) * across + Math.floor(x / 8);
      sums[block] =
        (sums[block] ?? 0) + ((data[at] ?? 0) + (data[at + 1] ?? 0) + (data[at + 2] ?? 0)) / 3 / 64;
    }
  return sums;
}

const meanDifference = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + Math.abs(value - (b[i] ?? 0)), 0) / a.length;

/** One swim of a swimmer who is not invented and whose consent is not recorded. */
async function onlyUnconsented(library: string): Promise<void> {
  const samples = new URL('../../sample-clips/library/', import.meta.url);
  await mkdir(path.join(library, 'swims'), { recursive: true });
  await cp(new URL(`swims/${swimId}`, samples), path.join(library, 'swims', swimId), { recursive: true });
  const swim = swimIn(library);
  const real = { ...swim, card: { ...swim.card, invented: false } };
  await writeFile(path.join(library, 'swims', swimId, 'swim.json'), JSON.stringify(real));
  const squad = parseSquad(readFileSync(new URL('squad.json', samples), 'utf8'));
  if (!squad.ok) throw new Error('no squad');
  const swimmers = squad.value.swimmers.map((each) => ({ ...each, invented: false, consent: null }));
  await writeFile(path.join(library, 'squad.json'), JSON.stringify({ ...squad.value, swimmers }));
}

test.describe('a swimmer without recorded consent', () => {
  test.use({
    arrange: async ({ samples: all }, use) => {
      await use(all ? null : onlyUnconsented);
    },
    samples: false,
  });
  test('is asked about before pictures are saved, in dialog, handout and command line; data need no asking', async ({
    page,
    app,
  }) => {
    await page.goto(`${new URL(page.url()).origin}/#/bench/${swimId}`);
    await expect(page.locator('.where')).toBeVisible();
    await page.keyboard.press('Shift+X');
    const dialog = page.getByRole('dialog', { name: 'Export' });
    const save = dialog.getByRole('button', { name: /^Save 1 file/ });
    await expect(save).toBeDisabled();
    await dialog.getByRole('checkbox', { name: /^Stills/ }).uncheck();
    await dialog.getByRole('checkbox', { name: /^Events CSV/ }).check();
    await expect(save).toBeEnabled();
    await dialog.getByRole('checkbox', { name: /^Events CSV/ }).uncheck();
    await dialog.getByRole('checkbox', { name: /^Stills/ }).check();
    const once = dialog.getByRole('checkbox', { name: /^Just this once: I hold the consent/ });
    await once.check();
    await save.click();
    await expect(dialog.getByText(/^Saved/)).toBeVisible();
    // once is once
    await expect(once).not.toBeChecked();
    await expect(save).toBeDisabled();
    await page.keyboard.press('Escape');
    await page.keyboard.press('Shift+H');
    await expect(page.getByRole('img', { name: /The page as it will print/ })).toHaveAttribute(
      'data-drawn',
      'true',
    );
    await expect(page.getByRole('button', { name: 'Save PDF' })).toBeDisabled();
    const asked = page.getByRole('region', { name: 'Consent' });
    await expect(asked).toContainText('No written consent to show Pip is recorded.');
    await page.getByRole('checkbox', { name: /^Just this once/ }).check();
    await expect(page.getByRole('button', { name: 'Save PDF' })).toBeEnabled();
    await page.getByRole('checkbox', { name: /^Just this once/ }).uncheck();

    // recorded once, with who gave it and when, it is not asked for again anywhere; and it can be taken back
    const record = async (): Promise<void> => {
      await asked.getByLabel('Given by').fill('Pip’s guardian');
      await asked.getByLabel('Given by').press('Enter');
      await expect(page.getByText(/given by Pip’s guardian/)).toBeVisible();
      await expect(asked).toHaveCount(0);
    };
    const onRecord = (): unknown => {
      const squad = parseSquad(readFileSync(path.join(app.library, 'squad.json'), 'utf8'));
      return squad.ok && squad.value.swimmers.find(({ name }) => name === 'Pip')?.consent;
    };
    await record();
    expect(onRecord()).toEqual({
      givenOn: expect.stringMatching(/^\d{4}-\d\d-\d\d$/),
      givenBy: 'Pip’s guardian',
      note: '',
    });
    await page.getByRole('button', { name: 'Take it back' }).click();
    await expect(asked).toBeVisible();
    expect(onRecord()).toBeNull();
    await record();
    await expect(page.getByRole('button', { name: 'Save PDF' })).toBeEnabled();
    await page.keyboard.press('Escape');
    await expect(page.locator('.where')).toBeVisible();
    for (const [key, name, save] of [
      ['Shift+X', 'Export', /^Save 1 file/],
      ['i', /^Still of frame/, 'Save PNG'],
      ['Shift+V', 'Video of this swim', 'Save the video'],
    ] as const) {
      await page.keyboard.press(key);
      const dialog = page.getByRole('dialog', { name });
      await expect(dialog.getByRole('button', { name: save })).toBeEnabled();
      await expect(asked).toHaveCount(0);
      await page.keyboard.press('Escape');
      await expect(dialog).toHaveCount(0);
    }
    // the command line asks the same record: what follows is a swimmer without
    const squad = parseSquad(readFileSync(path.join(app.library, 'squad.json'), 'utf8'));
    if (!squad.ok) throw new Error('no squad');
    const swimmers = squad.value.swimmers.map((each) => ({ ...each, consent: null }));
    await writeFile(path.join(app.library, 'squad.json'), JSON.stringify({ ...squad.value, swimmers }));

    const target = path.join(app.library, 'swims', swimId);
    const run = (...more: string[]) =>
      execa(
        'npm',
        ['run', '-s', 'export', '--', 'stills', target, '--frames', '63', '--out', app.library, ...more],
        { reject: false },
      );
    const refused = await run();
    expect([refused.exitCode, refused.stdout]).toEqual([1, '']);
    expect(refused.stderr).toContain('No written consent to show Pip is recorded');
    const held = await run('--consent-held');
    expect(held.exitCode).toBe(0);
    expect(await numberIn(held.stdout)).toBe(62);
    const again = await run('--consent-held');
    expect(again.exitCode).toBe(1);
    expect(again.stderr).toContain('is there already');
  });
});
