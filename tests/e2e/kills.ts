import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { type BrowserContext, chromium, type Page } from '@playwright/test';
import { parseSwim } from '#core/swim-file/swim-file';
import { seeded } from '../../sample-clips/model/seeded';
import { chromiumOptions } from '../browser/harness/chromium';
import { makeLibrary, type StartedApp, startApp } from './started-app';

/** What is killed: the program that keeps the library, one page of the browser, or the whole browser. */
export const victims = ['host', 'page', 'browser'] as const;
export type Victim = (typeof victims)[number];

export interface Kill {
  readonly victim: Victim;
  /** Age of the newest state that reached the disk, seconds before the kill; 0 when nothing was lost. */
  readonly lostSeconds: number;
  readonly marks: number;
  /** What is wrong after it; empty when the promise was kept. */
  readonly faults: readonly string[];
}

/** Marks on the score at one moment, as text that equals the file's when they agree. */
interface Seen {
  readonly at: number;
  readonly marks: string;
}

const swimId = 'sample-phone-portrait';
/** The promise: a kill loses no mark older than this. */
const promisedSeconds = 2;
const keys = ['q', 'w', 'e', 'r', 't', 'a', 's', 'd', 'f', 'g', 'z', 'c'];

const marksOf = (marks: readonly (readonly [string, number])[]): string =>
  marks
    .map(([id, frame]) => `${id}@${frame}`)
    .sort()
    .join(' ');

async function look(page: Page): Promise<Seen> {
  const marks = await page
    .locator('.glyph')
    .evaluateAll((glyphs) =>
      glyphs.map((each): [string, number] => [
        each.getAttribute('data-event') ?? '',
        Number(each.getAttribute('data-frame')),
      ]),
    );
  return { at: Date.now(), marks: marksOf(marks) };
}

/** One thing a coach in a hurry does: step, mark, move a mark, remove one, take it back, save a still. */
async function act(page: Page, random: () => number): Promise<void> {
  const roll = random();
  const press = (key: string): Promise<void> => page.locator('body').press(key);
  if (roll < 0.55) {
    await press(random() < 0.7 ? 'ArrowRight' : 'Shift+ArrowRight');
    await press(keys[Math.floor(random() * keys.length)] ?? 'a');
  } else if (roll < 0.75) await press(random() < 0.5 ? '.' : ',');
  else if (roll < 0.83) await press('Delete');
  else if (roll < 0.92) await press('Control+z');
  else {
    await press('i');
    const save = page.getByRole('dialog').getByRole('button', { name: /save/i });
    await save.click({ timeout: 2000 });
    await press('Escape');
  }
}

/** Stills that are no whole PNG under their final name. */
function brokenStills(library: string): readonly string[] {
  const folder = path.join(library, 'exports');
  const end = Buffer.from('IEND');
  return readdirSync(folder)
    .filter((name) => name.endsWith('.png'))
    .filter((name) => {
      const bytes = readFileSync(path.join(folder, name));
      return !bytes.subarray(-12).includes(end);
    });
}

function marksOnDisk(library: string): { readonly marks: string; readonly fault: string | null } {
  const parsed = parseSwim(readFileSync(path.join(library, 'swims', swimId, 'swim.json'), 'utf8'));
  return parsed.ok
    ? { marks: marksOf(parsed.value.events.map(({ id, frame }) => [id, frame])), fault: null }
    : { marks: '', fault: parsed.fault.code };
}

interface Running {
  app: StartedApp;
  context: BrowserContext;
  page: Page;
}

/**
 * Kills host, page or browser at random moments of heavy marking, `count` times over one library, and says after each
 * what the disk holds. The same seed gives the same victims and moments; what was on the way then is chance.
 */
export async function runKills(
  count: number,
  seed: number,
  tell: (kill: Kill) => void = () => undefined,
): Promise<readonly Kill[]> {
  const moments = seeded(seed);
  const random = seeded(seed + 1);
  const { library, remove } = await makeLibrary(true);
  const profile = await mkdtemp(path.join(tmpdir(), 'submark-profile-'));
  const openBrowser = async (app: StartedApp, first: boolean): Promise<Omit<Running, 'app'>> => {
    const context = await chromium.launchPersistentContext(profile, chromiumOptions());
    const page = context.pages()[0] ?? (await context.newPage());
    const { origin } = new URL(app.address);
    if (first) await page.goto(app.address);
    await page.goto(`${origin}/#/bench/${swimId}`);
    await page.locator('.where').waitFor();
    return { context, page };
  };
  let app = await startApp(library);
  let running: Omit<Running, 'app'> | null = await openBrowser(app, true);
  const kills: Kill[] = [];
  try {
    for (let i = 0; i < count; i++) {
      running ??= await openBrowser(app, true);
      const { page, context }: Omit<Running, 'app'> = running;
      await page.locator('.stage[data-shown-frame]:not([data-shown-frame=""])').waitFor();
      const seen: Seen[] = [await look(page)];
      const end = Date.now() + 600 + 3200 * moments();
      while (Date.now() < end) {
        await act(page, random);
        seen.push(await look(page));
      }
      const victim = victims[Math.floor(moments() * victims.length)] ?? 'host';
      const killedAt = Date.now();
      if (victim === 'host') app.kill();
      else if (victim === 'browser') spawnSync('pkill', ['-9', '-f', profile]);
      else {
        const session = await context.newCDPSession(page);
        // the answer never comes: the page that would give it is gone
        void session.send('Page.crash').catch(() => undefined);
      }
      // what was handed to the disk before the kill may still be on its way when only the window died
      await wait(400);
      const disk = marksOnDisk(library);
      const agreed = seen.findLastIndex(({ marks }) => marks === disk.marks);
      const next = seen[agreed + 1];
      const lostSeconds = agreed >= 0 && next ? Math.max(0, (killedAt - next.at) / 1000) : 0;
      const faults = [
        ...(disk.fault ? [`swim.json is ${disk.fault}`] : []),
        ...(agreed < 0 ? ['the disk holds marks that were never on the screen together'] : []),
        ...(lostSeconds > promisedSeconds ? [`a change ${lostSeconds.toFixed(1)} s old was lost`] : []),
        ...brokenStills(library).map((name) => `${name} is half a picture`),
      ];
      const kill: Kill = {
        victim,
        lostSeconds,
        marks: disk.marks === '' ? 0 : disk.marks.split(' ').length,
        faults,
      };
      kills.push(kill);
      tell(kill);
      if (victim === 'host') app = await startApp(library);
      if (victim !== 'page' || i === count - 1) await context.close().catch(() => undefined);
      if (victim === 'browser') {
        await app.stop();
        app = await startApp(library);
      }
      if (victim === 'page') {
        // the new page comes first: with its last page a browser forgets who may enter
        const fresh = await context.newPage();
        await page.close().catch(() => undefined);
        await fresh.goto(`${new URL(app.address).origin}/#/bench/${swimId}`);
        await fresh.locator('.where').waitFor();
        running = { context, page: fresh };
      } else running = null;
    }
  } finally {
    await running?.context.close().catch(() => undefined);
    await app.stop();
    await remove();
    await rm(profile, { recursive: true, force: true });
  }
  return kills;
}
