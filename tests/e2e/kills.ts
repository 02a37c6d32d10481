import { spawnSync } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { type BrowserContext, chromium, expect, type Page } from '@playwright/test';
import { seeded } from '../../sample-clips/model/seeded';
import { chromiumOptions } from '../browser/harness/chromium';
import { type Activity, act, activities, begin, swimUnderWork, thinBodyLines } from './kill-activities';
import { createExportCheck, look, type Made, marksOnDisk, type Seen } from './kill-checks';
import { makeLibrary, type StartedApp, startApp } from './started-app';

/** What is killed: the program that keeps the library, one page of the browser, or the whole browser. */
export const victims = ['host', 'page', 'browser'] as const;
type Victim = (typeof victims)[number];

export interface Kill {
  readonly victim: Victim;
  readonly activity: Activity;
  /** Age of the oldest change that did not reach the disk, seconds before the kill; 0 when nothing was lost. */
  readonly lostSeconds: number;
  /** The same of what the next window shows, which has the journal too. */
  readonly lostAfterReopening: number;
  readonly marks: number;
  /** What is wrong after it; empty when the promise was kept. */
  readonly faults: readonly string[];
}

/** The promise: a kill loses no mark older than this. */
const promisedSeconds = 2;

/** A button that does not come in time on a busy machine is left; anything else is a bug of the story. */
function notInTime(error: unknown): void {
  if (!(error instanceof Error) || error.name !== 'TimeoutError') throw error;
}

interface Running {
  readonly context: BrowserContext;
  readonly page: Page;
}

/** How old the oldest change is that `marks` lacks; null when they were never on the screen together. */
function lostOf(seen: readonly Seen[], marks: string, killedAt: number): number | null {
  const agreed = seen.findLastIndex((each) => each.marks === marks);
  if (agreed < 0) return null;
  const next = seen[agreed + 1];
  return next ? Math.max(0, (killedAt - next.at) / 1000) : 0;
}

function faultsOf(where: string, lost: number | null): string[] {
  if (lost === null) return [`${where} holds marks that were never on the screen together`];
  return lost > promisedSeconds ? [`a change ${lost.toFixed(1)} s old is lost from ${where}`] : [];
}

/**
 * Kills host, page or browser at random moments of work, `count` times over one library, and says after each what the
 * disk holds and what the next window shows. The same seed gives the same activities, victims and moments; what was on
 * the way then is chance.
 */
export async function runKills(
  count: number,
  seed: number,
  tell: (kill: Kill) => void = () => undefined,
  made: Made = { stills: 0, videos: 0, copies: 0 },
  among: readonly Activity[] = activities,
): Promise<readonly Kill[]> {
  const moments = seeded(seed);
  const random = seeded(seed + 1);
  const one = <T>(of: readonly T[]): T => of[Math.floor(moments() * of.length)] as T;
  const { library, remove } = await makeLibrary(true);
  const profile = await mkdtemp(path.join(tmpdir(), 'submark-profile-'));
  const showBench = async (page: Page, app: StartedApp): Promise<void> => {
    await page.goto(`${new URL(app.address).origin}/#/bench/${swimUnderWork}`);
    await page.locator('.where').waitFor();
    await page.locator('.stage[data-shown-frame]:not([data-shown-frame=""])').waitFor();
  };
  const openBrowser = async (app: StartedApp): Promise<Running> => {
    const context = await chromium.launchPersistentContext(profile, chromiumOptions());
    const page = context.pages()[0] ?? (await context.newPage());
    await page.goto(app.address);
    await showBench(page, app);
    return { context, page };
  };
  let app = await startApp(library);
  thinBodyLines(library);
  const checkExports = createExportCheck(library, made);
  let running: Running = await openBrowser(app);
  const kills: Kill[] = [];
  try {
    for (let i = 0; i < count; i++) {
      const { page, context } = running;
      // each in turn, so that few kills already meet them all
      const activity = among[i % among.length] as Activity;
      const victim = one(victims);
      const seen: Seen[] = [await look(page)];
      await begin(page, activity).catch(notInTime);
      const end = Date.now() + 600 + 3200 * moments();
      while (Date.now() < end) {
        await act(page, activity, random).catch(notInTime);
        seen.push(await look(page));
      }
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
      const lost = lostOf(seen, disk.marks, killedAt);
      if (victim === 'page') {
        // the new page comes first: with its last page a browser forgets who may enter
        const fresh = await context.newPage();
        await page.close().catch(() => undefined);
        await showBench(fresh, app);
        running = { context, page: fresh };
      } else {
        if (victim === 'host') app = await startApp(library);
        await context.close().catch(() => undefined);
        if (victim === 'browser') {
          await app.stop();
          app = await startApp(library);
        }
        running = await openBrowser(app);
      }
      const saved = running.page.locator('[data-save]').first();
      const state = await expect(saved)
        .toHaveAttribute('data-save', 'saved', { timeout: 10_000 })
        .then(() => 'saved')
        .catch(() => saved.getAttribute('data-save'));
      const after = await look(running.page);
      const lostAfter = lostOf(seen, after.marks, killedAt);
      const kill: Kill = {
        victim,
        activity,
        lostSeconds: lost ?? 0,
        lostAfterReopening: lostAfter ?? 0,
        marks: disk.marks === '' ? 0 : disk.marks.split(' ').length,
        faults: [
          ...(disk.fault ? [`swim.json is ${disk.fault}`] : faultsOf('the disk', lost)),
          ...faultsOf('the next window', lostAfter),
          ...(state === 'saved' ? [] : [`the next window says ${state}, not saved`]),
          ...(marksOnDisk(library).marks === after.marks ? [] : ['the next window and the disk differ']),
          ...(await checkExports()),
        ],
      };
      kills.push(kill);
      tell(kill);
    }
  } finally {
    await running.context.close().catch(() => undefined);
    await app.stop();
    await remove();
    await rm(profile, { recursive: true, force: true });
  }
  return kills;
}
