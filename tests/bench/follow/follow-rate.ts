import { readdirSync, writeFileSync } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { chromium, type Page } from '@playwright/test';
import { parseSwim, serialiseSwim } from '#core/swim-file/swim-file';
import type { Truth } from '../../../sample-clips/truth-schema';
import { chromiumOptions } from '../../browser/harness/chromium';
import { makeLibrary, startApp } from '../../e2e/started-app';
import { followClips, keptFile, madeFollowClip } from './follow-clips';
import { coachLines, drawnCoach, layLines } from './follow-coach';

/**
 * How many pictures a second are followed in the app itself, decoding and all: each drawn clip is added as a coach would,
 * its body lines lie in the swim's file, and from "All again" to the panel's answer the clock runs. Run with tsx; names of clips as
 * arguments. What was measured is kept in .cache/follow; follow.ts writes it into the docs.
 */
const wanted = process.argv.slice(2);
const rounds = 3;
const followed = 'Every stretch between body lines is followed.';

/** Adds the clip through the app's own dialog; the folder of its swim. */
async function addClip(page: Page, library: string, file: string, rate: number): Promise<string> {
  await page.getByLabel('Clips to add').setInputFiles(file);
  const adding = page.getByRole('dialog', { name: /^Add / });
  await adding.getByLabel('Filmed at').fill(String(rate));
  await adding.getByRole('button', { name: 'Add to the shelf' }).click();
  await page.locator('.bench').waitFor();
  const [folder] = readdirSync(path.join(library, 'swims'));
  if (!folder) throw new Error('nothing was added');
  return folder;
}

async function layLinesOnDisk(file: string, truth: Truth, lines: readonly number[]): Promise<void> {
  const parsed = parseSwim(await readFile(file, 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  const postures = layLines(drawnCoach(truth, 1.5, 7), lines);
  await writeFile(file, serialiseSwim({ ...parsed.value, postures: [...postures] }));
}

/** Seconds from asking for everything anew to the answer. */
async function secondsAgain(page: Page): Promise<number> {
  const panel = page.getByRole('complementary', { name: 'Follow and propose' });
  const began = performance.now();
  await panel.getByRole('button', { name: 'All again' }).click();
  await panel.getByRole('progressbar', { name: 'Following' }).waitFor();
  await panel.getByText(followed).waitFor();
  return (performance.now() - began) / 1000;
}

const browser = await chromium.launch(chromiumOptions());
try {
  for (const clip of followClips()) {
    if (wanted.length > 0 && !wanted.includes(clip.name)) continue;
    const { file, truth } = await madeFollowClip(clip);
    const lines = coachLines(clip, truth);
    const { library, remove } = await makeLibrary(false);
    const app = await startApp(library);
    const page = await (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage();
    try {
      page.setDefaultTimeout(120_000);
      await page.goto(app.address);
      const id = await addClip(page, library, file, clip.scenario.captureRate);
      const { origin } = new URL(app.address);
      await page.goto(`${origin}/#/`);
      await page.locator('.swim-tile-open').waitFor();
      await layLinesOnDisk(path.join(library, 'swims', id, 'swim.json'), truth, lines);
      await page.goto(`${origin}/#/bench/${id}`);
      await page.reload();
      await page.locator('.stage[data-shown-frame]:not([data-shown-frame=""])').first().waitFor();
      await page
        .locator('.stage')
        .first()
        .click({ position: { x: 20, y: 20 } });
      await page.keyboard.press('o');
      await page.getByText(followed).waitFor();
      const pictures = (lines.at(-1) ?? 0) - (lines[0] ?? 0) + 1;
      const rates: number[] = [];
      for (let round = 0; round < rounds; round++) rates.push(pictures / (await secondsAgain(page)));
      const rate = rates.sort((a, b) => a - b)[rounds >> 1] ?? 0;
      console.log(
        clip.name,
        `${pictures} pictures`,
        rates.map((each) => each.toFixed(0)).join(' '),
        'a second',
      );
      writeFileSync(keptFile(clip.name, 'rate.json'), JSON.stringify({ pictures, rate }));
    } finally {
      await page.context().close();
      await app.stop();
      await remove();
    }
  }
} finally {
  await browser.close();
}
