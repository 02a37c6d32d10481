import { createHash } from 'node:crypto';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { parseSwim, serialiseSwim } from '#core/swim-file/swim-file';
import { chromiumOptions } from '../../browser/harness/chromium';
import { makeLibrary, startApp } from '../../e2e/started-app';
import { writeSection } from '../write-section';

/** How long the shelf takes to open, find and scroll at thousands of swims. How many as the argument. Run with tsx. */
const count = Number(process.argv[2] ?? 5000);
const swimmers = 60;
const rounds = 5;
const sample = fileURLToPath(
  new URL('../../../sample-clips/library/swims/sample-butterfly-together/', import.meta.url),
);
const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;

const { library, remove } = await makeLibrary(false);
const parsed = parseSwim(await readFile(path.join(sample, 'swim.json'), 'utf8'));
if (!parsed.ok) throw new Error(parsed.fault.code);
const swim = parsed.value;
const thumbnail = await readFile(path.join(sample, 'thumb.jpg'));
const swimmerOf = (at: number): string => `swimmer-${String((at % swimmers) + 1).padStart(2, '0')}`;
await writeFile(
  path.join(library, 'squad.json'),
  JSON.stringify({
    format: 'submark-squad',
    version: 2,
    swimmers: Array.from({ length: swimmers }, (_, at) => ({
      id: swimmerOf(at),
      name: `Swimmer ${(at % swimmers) + 1}`,
      birthYear: null,
      bodyTable: null,
      streamlineMetres: null,
      consent: null,
      targets: [],
      invented: true,
    })),
  }),
);
for (let at = 0; at < count; at++) {
  const id = `swim-${String(at).padStart(5, '0')}`;
  const folder = path.join(library, 'swims', id);
  await mkdir(folder, { recursive: true });
  const clip = Buffer.alloc(200_000, at % 251);
  clip.writeUInt32LE(at);
  const edges = createHash('sha256').update(clip.subarray(0, 65_536)).update(clip.subarray(-65_536));
  const day = new Date(Date.UTC(2024, 0, 1 + (at % 900))).toISOString().slice(0, 10);
  await writeFile(path.join(folder, 'clip.mp4'), clip);
  await writeFile(path.join(folder, 'thumb.jpg'), thumbnail);
  await writeFile(
    path.join(folder, 'swim.json'),
    serialiseSwim({
      ...swim,
      id,
      clip: {
        ...swim.clip,
        place: { kind: 'inside', name: 'clip.mp4' },
        fingerprint: { bytes: clip.length, edgesSha256: edges.digest('hex') },
      },
      card: {
        ...swim.card,
        swimmerId: swimmerOf(at),
        swimmerName: `Swimmer ${(at % swimmers) + 1}`,
        date: day,
        drill: at % 3 === 0 ? 'kick with fins' : '',
      },
    }),
  );
}
console.log(`${count} swims laid`);

const browser = await chromium.launch(chromiumOptions());
const figures: Record<string, number> = {};
try {
  const opening = async (): Promise<{ first: number; all: number; read: number }> => {
    const app = await startApp(library);
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    try {
      const start = performance.now();
      await page.goto(app.address);
      await page.locator('.swim-tile').first().waitFor();
      const first = performance.now() - start;
      const said = `^Shelf ${count} swims, \\d+ swimmers`;
      await page.getByText(new RegExp(said)).waitFor({ timeout: 600_000 });
      const all = performance.now() - start;
      await page.getByText(new RegExp(`${said}$`)).waitFor({ timeout: 600_000 });
      return { first, all, read: performance.now() - start };
    } finally {
      await page.close();
      await app.stop();
    }
  };
  const never = await opening();
  figures['first tiles, nothing indexed yet'] = never.first;
  figures['all swims, nothing indexed yet'] = never.all;
  figures['all swims with their readings, nothing indexed yet'] = never.read;
  const again: { first: number; all: number }[] = [];
  for (let round = 0; round < rounds; round++) again.push(await opening());
  figures['program just started: window to first tiles'] = median(again.map(({ first }) => first));
  figures['program just started: window to all swims'] = median(again.map(({ all }) => all));

  const app = await startApp(library);
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(app.address);
  await page.locator('.swim-tile').first().waitFor();
  const back: number[] = [];
  const typed: number[] = [];
  const timed = async (act: () => Promise<void>): Promise<number> => {
    const start = performance.now();
    await act();
    return performance.now() - start;
  };
  for (let round = 0; round < rounds; round++) {
    await page.goto(`${new URL(app.address).origin}/#/nowhere`);
    await page.locator('.no-such-screen').waitFor();
    await page.waitForTimeout(1500);
    back.push(
      await timed(async () => {
        await page.goto(`${new URL(app.address).origin}/#/`);
        await page.locator('.swim-tile').first().waitFor();
      }),
    );
  }
  figures['from another screen to the shelf'] = median(back);
  const search = page.getByRole('searchbox');
  for (const [at, text] of ['fins', 'swimmer 7 fins', 'kick 2025', 'fins 12'].entries()) {
    await search.fill('');
    await page.waitForTimeout(300);
    typed.push(
      await timed(async () => {
        await search.fill(text);
        await page.locator('.shelf-filters output', { hasText: /of \d+ swims/ }).waitFor();
      }),
    );
    if (at === 3) await search.fill('');
  }
  console.log(figures);
  figures['typing a search to its answer'] = median(typed);
  await page.waitForTimeout(500);
  const slowest = await page.evaluate(async () => {
    let worst = 0;
    let before = performance.now();
    for (let step = 0; step < 120; step++) {
      window.scrollBy(0, 400);
      await new Promise(requestAnimationFrame);
      const now = performance.now();
      worst = Math.max(worst, now - before);
      before = now;
    }
    return worst;
  });
  figures['slowest picture of 120 while scrolling by 400 pixels each'] = slowest;
  figures['tiles drawn at once'] = await page.locator('.swim-tile').count();
  await page.close();
  await app.stop();
} finally {
  await browser.close();
  await remove();
}
writeSection('shelf', 'app/shelf.ts', [
  `## The shelf at ${count.toLocaleString('en')} swims`,
  '',
  `${count.toLocaleString('en')} copies of a marked sample swim, ${swimmers} swimmers. Milliseconds (the last line: a count), medians of ${rounds}. Headless Chromium on 2 processor cores, shared with other programs.`,
  '',
  '| what | ms |',
  '| --- | --- |',
  ...Object.entries(figures).map(([what, value]) => `| ${what} | ${value.toFixed(0)} |`),
]);
console.log(figures);
