import { mkdir } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { chromiumOptions } from '../browser/harness/chromium';
import { makeLibrary, startApp } from './started-app';

// `npm run pictures`: the pictures of the documents, taken from the running app on a fresh library of samples
const folder = fileURLToPath(new URL('../../docs/pictures/', import.meta.url));
await mkdir(folder, { recursive: true });
const { library, remove } = await makeLibrary(true);
const app = await startApp(library, 'month');
const browser = await chromium.launch(chromiumOptions());
try {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, locale: 'en-GB' });
  await page.goto(app.address);
  await page.locator('.swim-tile img').first().waitFor();
  await page.screenshot({ path: `${folder}shelf.png` });
  const openBench = () => page.goto(`${new URL(page.url()).origin}/#/bench/sample-butterfly-together`);
  await openBench();
  const shown = async (frame: number): Promise<void> => {
    await page.getByRole('slider', { name: 'Scrub through the film' }).fill(String(frame));
    await page.locator(`.where[data-frame="${frame}"]:not(.waiting)`).waitFor();
    await page.waitForTimeout(300);
  };
  await page.locator('.where').waitFor();
  // the film opens after the marks are there
  await page.waitForTimeout(2500);
  await shown(60);
  await page.screenshot({ path: `${folder}bench.png` });
  await page.goto(
    `${new URL(page.url()).origin}/#/pair/sample-butterfly-together/sample-butterfly-late-kick`,
  );
  await page.locator('.pair-table table').first().waitFor();
  await page.locator('.pair-stage[data-side="B"] canvas').first().waitFor();
  await page.waitForTimeout(2000);
  await page.screenshot({ path: `${folder}pair.png` });
  const home = new URL(page.url()).origin;
  await page.goto(`${home}/#/sets/sample-practice-2026-05-12`);
  await page.locator('.plan-item-phrase').nth(1).click();
  await page.getByText('No deep or fast breathing', { exact: false }).waitFor();
  await page.screenshot({ path: `${folder}sets.png` });
  await page.goto(`${home}/#/sets/sample-practice-2026-05-28/deck`);
  await page.locator('.deck-item select').selectOption({ index: 3 });
  await page.getByRole('button', { name: 'Start the watch of Ansel' }).click();
  await page.waitForTimeout(1500);
  await page.screenshot({ path: `${folder}deck.png` });
  await page.goto(`${home}/#/trials/sample-trial-depth`);
  await page.locator('.trial-plot svg').first().waitFor();
  await page.getByText(/Reading \d+ of \d+ swims/).waitFor({ state: 'detached' });
  await page.waitForTimeout(500);
  await page.screenshot({ path: `${folder}trial.png` });
  await page.goto(`${home}/#/season/pip`);
  await page.getByRole('combobox', { name: 'Reading' }).selectOption('kick2-bottom-to-exit');
  await page.locator('.season-plot svg').waitFor();
  await page.waitForTimeout(500);
  await page.screenshot({ path: `${folder}season.png` });
  await page.goto(`${home}/#/handout/sample-butterfly-together`);
  await page.getByPlaceholder('The one thing to think of').fill('Feet up as the hands go in');
  await page.waitForTimeout(2500);
  await page.screenshot({ path: `${folder}handout.png` });
  await openBench();
  await page.locator('.where').waitFor();
  for (const theme of ['Light', 'Glare']) {
    await page.getByRole('button', { name: /Shelf/ }).click();
    await page.getByRole('radio', { name: theme }).check({ force: true });
    await openBench();
    await page.locator('.where').waitFor();
    await shown(60);
    await page.screenshot({ path: `${folder}bench-${theme.toLowerCase()}.png` });
  }
} finally {
  await browser.close();
  await app.stop();
  await remove();
}
