import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Page } from '@playwright/test';
import { sureEnough } from '#core/follow/follow-confidence';
import { type LandmarkName, landmarkNames } from '#core/marks/landmark';
import { landmarkWords } from '#core/marks/mark-words';
import { parseSwim } from '#core/swim-file/swim-file';
import type { Swim } from '#core/swim-file/swim-schema';
import { truthSchema } from '../../sample-clips/truth-schema';
import { chromiumOptions } from '../browser/harness/chromium';
import { makeLibrary, startApp } from './started-app';

/**
 * Counts what a coach presses and clicks from *Add swims* to the saved handout: a clip is added, its scene set, three body lines laid,
 * points followed, what is unsure answered, proposals accepted, the handout saved; with `see` as an argument the swimmer is seen instead. The coach answers by the drawn truth, so that a
 * right point is called right. Run with tsx; names of sample clips as arguments, all of two without.
 */
const wanted = process.argv.slice(2).filter((each) => each !== 'see');
/** Without a line laid: the swimmer is seen, and what is proposed is reviewed stroke by stroke. */
const bySeeing = process.argv.includes('see');
const clips = wanted.length > 0 ? wanted : ['butterfly-together', 'phone-portrait'];
/** Body lines are laid on so many frames, half a second apart, in the middle of the film. */
const linesLaid = 3;
/** Questions a coach has patience for. */
const mostQuestions = 20;
/** Nearer than this share of the body length a point is right. */
const rightShare = 0.02;

interface Counted {
  keys: number;
  clicks: number;
}

/** Counts real key presses and clicks in the page, however the app answers them. */
async function count(page: Page, counted: Counted): Promise<void> {
  await page.exposeFunction('countStep', (what: 'keys' | 'clicks') => {
    counted[what] += 1;
  });
  await page.addInitScript(() => {
    const told = window as unknown as { countStep(what: 'keys' | 'clicks'): void };
    const alone = new Set(['Shift', 'Control', 'Alt', 'Meta']);
    window.addEventListener(
      'keydown',
      (event) => {
        if (event.isTrusted && !event.repeat && !alone.has(event.key)) told.countStep('keys');
      },
      true,
    );
    window.addEventListener(
      'pointerdown',
      (event) => {
        if (event.isTrusted) told.countStep('clicks');
      },
      true,
    );
  });
}

const truthOf = (clip: string) =>
  truthSchema.parse(
    JSON.parse(
      readFileSync(
        fileURLToPath(new URL(`../../sample-clips/truth/sample-${clip}.json`, import.meta.url)),
        'utf8',
      ),
    ),
  );

function clipFile(clip: string): string {
  const folder = fileURLToPath(new URL(`../../sample-clips/library/swims/sample-${clip}/`, import.meta.url));
  const name = readdirSync(folder).find((each) => each.startsWith(clip));
  if (!name) throw new Error(`no clip ${clip}`);
  return path.join(folder, name);
}

async function walk(page: Page, clip: string, library: string, counted: Counted): Promise<string> {
  const truth = truthOf(clip);
  const pointOn = (frame: number, name: LandmarkName): { x: number; y: number } => {
    const row = truth.points[frame] ?? [];
    const at = 2 * landmarkNames.indexOf(name);
    return { x: row[at] ?? 0, y: row[at + 1] ?? 0 };
  };
  // the button opens the system's own dialog: one click, and one for the file
  counted.clicks += 2;
  await page.getByLabel('Clips to add').setInputFiles(clipFile(clip));
  const adding = page.getByRole('dialog', { name: /^Add / });
  const add = adding.getByRole('button', { name: 'Add to the shelf' });
  await adding.getByLabel('Swimmer').click();
  await page.keyboard.type('Rowan');
  // where slow motion is asked, it was none
  const none = adding.getByRole('radio', { name: /true speed/i });
  if ((await none.count()) > 0 && !(await none.isChecked())) await none.click();
  await add.click();
  const shown = page.locator('.stage[data-shown-frame]:not([data-shown-frame=""])').first();
  await shown.waitFor({ timeout: 120_000 });
  const swim = (): Swim => {
    const swims = path.join(library, 'swims');
    const file = path.join(swims, readdirSync(swims)[0] ?? '', 'swim.json');
    const parsed = existsSync(file) ? parseSwim(readFileSync(file, 'utf8')) : null;
    if (!parsed?.ok) throw new Error('the swim is on disk');
    return parsed.value;
  };
  await page.waitForTimeout(1500);
  const { width, height } = swim().clip;
  /** Where a picture's point is on the screen, the whole picture being fitted. */
  const place = async ({ x, y }: { x: number; y: number }): Promise<{ x: number; y: number }> => {
    const box = await page.locator('.stage').first().boundingBox();
    if (!box) throw new Error('a stage');
    const scale = Math.min(box.width / width, box.height / height);
    return {
      x: box.x + (box.width - width * scale) / 2 + x * scale,
      y: box.y + (box.height - height * scale) / 2 + y * scale,
    };
  };
  const click = async (at: { x: number; y: number }): Promise<void> => {
    const { x, y } = await place(at);
    await page.mouse.click(x, y);
  };
  const frameShown = (frame: number) =>
    page.locator(`.where[data-frame="${frame}"]:not(.waiting)`).waitFor({ timeout: 120_000 });

  if (bySeeing) {
    const moments = await seeAndReview(page);
    await saveHandout(page);
    return `seen without a line, ${moments} moments accepted`;
  }

  // the scene: way of travel, surface
  const first = pointOn(0, 'shoulder');
  const goesRight = first.x > pointOn(0, 'hip').x;
  await page.getByRole('button', { name: goesRight ? 'goes right →' : '← goes left' }).click();
  await page.keyboard.press('2');
  await click({ x: width * 0.2, y: height * 0.25 });
  await click({ x: width * 0.8, y: height * 0.25 });

  // body lines in the middle of the film
  const rate = 1 / ((truth.realTimes[1] ?? 1) - (truth.realTimes[0] ?? 0));
  const inside = truth.points.flatMap((_, frame) =>
    landmarkNames.every((name) => {
      const { x, y } = pointOn(frame, name);
      return x > 12 && y > 12 && x < width - 12 && y < height - 12;
    })
      ? [frame]
      : [],
  );
  const middle = inside[Math.floor(inside.length / 2)] ?? 0;
  const apart = Math.min(Math.round(rate / 2), Math.floor((inside.length - 2) / linesLaid));
  const frames = Array.from({ length: linesLaid }, (_, i) => middle + (i - 1) * apart);
  for (const frame of frames) {
    // one pull on the scrubber
    counted.clicks += 1;
    await page.getByRole('slider', { name: 'Scrub through the film' }).fill(String(frame));
    await frameShown(frame);
    await page.locator('body').press('b');
    for (const name of landmarkNames) await click(pointOn(frame, name));
    await page.locator('body').press('Escape');
  }

  await page.locator('body').press('o');
  const panel = page.getByRole('complementary', { name: 'Follow and propose' });
  await panel.getByText('Every stretch between body lines is followed.').waitFor({ timeout: 300_000 });
  await page.waitForTimeout(1500);
  const unsure = swim().followed.reduce(
    (sum, { points }) => sum + points.filter(([, , confidence]) => confidence < sureEnough).length,
    0,
  );
  const questions = panel.getByText(/points? unsure/);
  const form = page.getByRole('region', { name: 'Unsure point', exact: true });
  const length = truth.bodyLengthMetres / truth.metresPerPixel;
  let asked = 0;
  let right = 0;
  const isNew = (await page.getByRole('button', { name: /^Hide the scene/ }).count()) > 0;
  while (asked < mostQuestions && (await questions.count()) > 0) {
    // earlier versions go to no next question by themselves
    if (!isNew || (await form.count()) === 0) {
      await page.locator('body').press('u');
      await page.waitForTimeout(400);
    }
    const frame = Number(await page.locator('.where').getAttribute('data-frame'));
    await frameShown(frame);
    const words = isNew
      ? ((await form
          .locator('strong')
          .textContent({ timeout: 3000 })
          .catch(() => null)) ?? '')
      : ((await page.locator('.stage-prompt strong').textContent()) ?? '');
    const name = landmarkNames.find((each) =>
      words.toLowerCase().includes(landmarkWords[each].toLowerCase()),
    );
    if (!name) break;
    const at = pointOn(frame, name);
    const run = swim().followed.find(
      (each) => each.landmark === name && frame >= each.frame && frame < each.frame + each.points.length,
    );
    const [x, y] = run?.points[frame - run.frame] ?? [0, 0];
    const isRight = Math.hypot(x - at.x, y - at.y) <= rightShare * length;
    asked += 1;
    if (isRight) right += 1;
    if (isNew && isRight && (await form.getByRole('button', { name: /^Right as it is/ }).count()) > 0)
      await page.locator('body').press('k');
    else await click(at);
    await page.waitForTimeout(300);
    // earlier versions follow again before they ask again
    if (!isNew)
      await panel.getByText('Every stretch between body lines is followed.').waitFor({ timeout: 300_000 });
  }
  await page.locator('body').press('Escape');
  if ((await page.locator('[data-proposal]').count()) > 0) await page.locator('body').press('Shift+K');
  await page.waitForTimeout(1000);
  await saveHandout(page);
  return `${asked} questions answered, ${right} about right points; ${unsure} points unsure at first`;
}

/** Sees the swimmer and accepts stroke by stroke; how many moments there were. */
async function seeAndReview(page: Page): Promise<number> {
  await page.locator('body').press('Shift+S');
  await page.getByText(/Submark saw the swimmer on/).waitFor({ timeout: 400_000 });
  const moments = await page.locator('[data-proposal]').count();
  await page.locator('body').press('p');
  const review = page.getByRole('region', { name: 'Review', exact: true });
  await review.waitFor();
  for (let left = moments; left > 0; ) {
    await page.locator('body').press('Shift+K');
    await page.waitForTimeout(600);
    const now = await page.locator('[data-proposal]').count();
    // what is less sure is looked at and taken by itself
    if (now === left) await page.locator('body').press('k');
    left = now;
  }
  return moments;
}

async function saveHandout(page: Page): Promise<void> {
  await page.locator('body').press('Shift+H');
  await page.getByRole('img', { name: /The page as it will print/ }).waitFor({ timeout: 120_000 });
  await page.locator('[data-drawn="true"]').waitFor({ timeout: 120_000 });
  await page.getByRole('checkbox', { name: /consent/ }).click();
  await page.locator('h1').first().click({ trial: true });
  await page.getByRole('button', { name: 'Save PDF' }).click();
  await page.getByText('handout.pdf').first().waitFor({ timeout: 120_000 });
}

const browser = await chromium.launch(chromiumOptions());
try {
  for (const clip of clips) {
    const { library, remove } = await makeLibrary(false);
    const app = await startApp(library);
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, locale: 'en-GB' });
    page.setDefaultTimeout(120_000);
    const counted: Counted = { keys: 0, clicks: 0 };
    try {
      await count(page, counted);
      await page.goto(app.address);
      const about = await walk(page, clip, library, counted);
      console.log(`${clip}: ${counted.keys} keys, ${counted.clicks} clicks; ${about}`);
    } catch (problem) {
      await page.screenshot({ path: `test-results/count-${clip}.png` });
      throw problem;
    } finally {
      await page.close();
      await app.stop();
      await remove();
    }
  }
} finally {
  await browser.close();
}
