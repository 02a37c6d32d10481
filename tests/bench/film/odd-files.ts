import { createHash } from 'node:crypto';
import { mkdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium, type Page } from '@playwright/test';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { chromiumOptions } from '../../browser/harness/chromium';
import { addedSwims } from '../../e2e/added-swims';
import { makeLibrary, type StartedApp, startApp } from '../../e2e/started-app';
import { writeSection } from '../write-section';
import { apart, decodeTruth, small, type Truth } from './decoded-truth';
import { makeOddFile, type OddFile, oddFiles } from './odd-files-list';

/**
 * Adds each odd file in the running app, steps through every frame, and compares count, size, times and pictures with
 * ffmpeg's own decode. Run with tsx; parts of names as arguments leave out the others and the docs.
 */
interface Verdict {
  readonly name: string;
  readonly frames: string;
  readonly pictures: string;
  /** What differs, empty where nothing does. */
  readonly faults: readonly string[];
  /** What the card said of damage. */
  readonly said: string;
  readonly checksum: string;
}

/** Half a frame at 240 a second: times further apart than this are wrong. */
const slackSeconds = 0.002;
/** Two small pictures are the same when they differ by less than this, coded anew or in another range of colours. */
const sameWithin = 14;

/** The picture on the stage, small and grey; waits until the frame is shown or lost. */
async function greyShown(
  page: Page,
  frame: number,
  size: { readonly width: number; readonly height: number },
): Promise<Uint8Array | null> {
  const shown = page.locator(`.stage[data-shown-frame="${frame}"]`);
  const lost = page.getByText(`Frame ${frame + 1} can’t be decoded`);
  await shown.or(lost).first().waitFor({ timeout: 15_000 });
  if (!(await shown.isVisible())) return null;
  const grey = await page.evaluate(
    ({ width, height, to }) => {
      const from = document.querySelector('.stage-picture') as HTMLCanvasElement;
      const scale = Math.min(from.width / width, from.height / height);
      const [across, down] = [width * scale, height * scale];
      const canvas = new OffscreenCanvas(to.width, to.height);
      const context = canvas.getContext('2d', { willReadFrequently: true });
      if (!context) throw new Error('no 2D context');
      context.imageSmoothingQuality = 'high';
      const [x, y] = [(from.width - across) / 2, (from.height - down) / 2];
      context.drawImage(from, x, y, across, down, 0, 0, to.width, to.height);
      const { data } = context.getImageData(0, 0, to.width, to.height);
      return Array.from(
        { length: to.width * to.height },
        (_, n) =>
          0.299 * (data[4 * n] ?? 0) + 0.587 * (data[4 * n + 1] ?? 0) + 0.114 * (data[4 * n + 2] ?? 0),
      );
    },
    { ...size, to: small },
  );
  return Uint8Array.from(grey);
}

/** Whether a picture is the true one of its time, and none of its neighbours. */
function isRight(grey: Uint8Array, truth: Truth, place: number): boolean {
  const far = (n: number): number => {
    const picture = truth.pictures[n];
    return picture ? apart(grey, picture.grey) : Number.POSITIVE_INFINITY;
  };
  const mine = far(place);
  return mine < sameWithin && [-2, -1, 1, 2].every((away) => far(place + away) > mine - 0.5);
}

async function look(page: Page, app: StartedApp, file: OddFile, folder: string): Promise<Verdict> {
  const clip = await makeOddFile(file, folder);
  const verdict = (more: Partial<Verdict>): Verdict => ({
    ...{ name: file.name, frames: '', pictures: '', faults: [], said: '', checksum: '' },
    ...more,
  });
  const before = new Set(addedSwims(app.library).map(({ id }) => id));
  await page.getByLabel('Clips to add').setInputFiles(clip);
  const dialog = page.getByRole('dialog', { name: `Add ${file.name}` });
  const alert = dialog.getByRole('alert');
  const add = dialog.getByRole('button', { name: 'Add to the shelf' });
  await alert.or(add).first().waitFor({ timeout: 60_000 });
  if (await alert.isVisible()) {
    const said = (await alert.textContent()) ?? '';
    await dialog.getByRole('button', { name: 'Close' }).click();
    return verdict({ said, faults: file.refused?.test(said) ? [] : ['refused'] });
  }
  await dialog
    .getByText(/^(every picture|at least|\d+ pictures? can’t)/)
    .or(alert)
    .first()
    .waitFor({ timeout: 20_000 })
    .catch(() => undefined);
  const row = async (name: string): Promise<string> =>
    (await dialog
      .locator(`dt:text-is("${name}") + dd`)
      .textContent({ timeout: 200 })
      .catch(() => '')) ?? '';
  const said = [await row('Lost'), await row('Checked')].filter((words) => words !== '').join('; ');
  const rate = dialog.getByLabel('No, true speed');
  if (await rate.isVisible()) await rate.check();
  await add.click();
  await page.locator('.bench').waitFor({ timeout: 60_000 });
  const swim = addedSwims(app.library).find(({ id }) => !before.has(id));
  if (!swim) return verdict({ said, faults: ['not added'] });
  const faults: string[] = file.refused ? ['was not refused'] : [];
  const { clip: facts } = swim;
  const { starts, ticksPerSecond } = tableFromRecord(facts.frameTimes);
  const truth = await decodeTruth(clip, file.fields ?? false);
  if (!truth) return verdict({ said, faults: ['ffmpeg shows nothing'] });
  if (facts.width !== truth.width || facts.height !== truth.height)
    faults.push(`size ${facts.width} × ${facts.height}, ffmpeg ${truth.width} × ${truth.height}`);
  if (starts.length !== truth.pictures.length)
    faults.push(`${starts.length} frames, ffmpeg ${truth.pictures.length}`);
  await page
    .locator('.stage[data-shown-frame="0"]')
    .waitFor({ timeout: 60_000 })
    .catch(() => faults.push('no picture at all'));
  const copying = page.locator('.copy-notice progress, .copy-pieces');
  await copying.first().waitFor({ state: 'detached', timeout: 120_000 });
  const sum = createHash('sha256');
  let right = 0;
  let lost = 0;
  const wrong: number[] = [];
  const offset = (truth.pictures[0]?.time ?? 0) - (starts[0] ?? 0) / ticksPerSecond;
  let late = 0;
  for (const [frame, start] of starts.entries()) {
    if (frame > 0) await page.keyboard.press('ArrowRight');
    const grey = await greyShown(page, frame, facts).catch(() => 'late' as const);
    if (grey === 'late') {
      faults.push(`frame ${frame} never came`);
      await page.screenshot({ path: path.join(tmpdir(), `odd-file-${file.name}.png`) });
      break;
    }
    if (!grey) {
      lost += 1;
      continue;
    }
    sum.update(grey);
    const time = start / ticksPerSecond + offset;
    const place = truth.pictures.findIndex((each) => Math.abs(each.time - time) < slackSeconds);
    const untimed = Number.isNaN(truth.pictures[0]?.time);
    if (place < 0 && !untimed) late += 1;
    else if (isRight(grey, truth, untimed ? frame : place)) right += 1;
    else wrong.push(frame);
  }
  if (late > 0) faults.push(`${late} frames at times that ffmpeg has none for`);
  if (lost > 0) faults.push(`${lost} frames can’t be shown`);
  if (wrong.length > 0) faults.push(`pictures differ: ${wrong.slice(0, 8).join(' ')}`);
  return verdict({
    ...{ said, faults },
    frames: `${starts.length} / ${truth.pictures.length}`,
    pictures: `${right} of ${starts.length}`,
    checksum: sum.digest('hex').slice(0, 8),
  });
}

const wanted = process.argv.slice(2);
const folder = path.join(tmpdir(), `submark-odd-files-${process.pid}`);
mkdirSync(folder, { recursive: true });
const { library, remove } = await makeLibrary(false);
const app = await startApp(library);
const browser = await chromium.launch(chromiumOptions());
const verdicts: Verdict[] = [];
try {
  const context = await browser.newContext();
  await (await context.newPage()).goto(app.address);
  for (const file of oddFiles) {
    if (wanted.length > 0 && !wanted.some((part) => file.name.includes(part))) continue;
    // a page of its own: nothing of one film is left for the next
    const page = await context.newPage();
    page.on('pageerror', (error) => console.log(`page: ${error.message}`));
    await page.goto(`${new URL(app.address).origin}/#/`);
    const verdict = await look(page, app, file, folder).catch(
      (problem: unknown): Verdict => ({
        ...{ name: file.name, frames: '', pictures: '', said: '', checksum: '' },
        faults: [String(problem).split('\n')[0]?.slice(0, 160) ?? ''],
      }),
    );
    verdicts.push(verdict);
    const { name, frames, pictures, faults, said, checksum } = verdict;
    console.log([name, frames, pictures, faults.join(', ') || 'good', said, checksum].join(' | '));
    await page.close();
  }
} finally {
  await browser.close();
  await app.stop();
  await remove();
  rmSync(folder, { recursive: true, force: true });
}
const good = verdicts.filter(({ faults }) => faults.length === 0);
const cell = (words: string): string => words.replaceAll('|', '/');
if (wanted.length === 0)
  writeSection('odd-files', 'film/odd-files.ts', [
    '## Odd files',
    '',
    `${verdicts.length} odd files made by ffmpeg (containers, codings, sizes, turned, fields, varying times, cut off, wrong bytes, one picture, only sound), each added in the running app and stepped through frame by frame, against ffmpeg’s own decode: number of frames, size, times to ${slackSeconds * 1000} ms, and each picture small and grey against that of its time and its four neighbours. ${good.length} are alike in everything, or refused for what they are; the others:`,
    '',
    '| file | frames, ours / ffmpeg’s | pictures right | differs | the card said |',
    '| --- | --- | --- | --- | --- |',
    ...verdicts
      .filter(({ faults }) => faults.length > 0)
      .map(
        ({ name, frames, pictures, faults, said }) =>
          `| ${[name, frames, pictures, faults.join('; '), said].map(cell).join(' | ')} |`,
      ),
    '',
    `Alike: ${good.map(({ name }) => name).join(', ')}.`,
  ]);
