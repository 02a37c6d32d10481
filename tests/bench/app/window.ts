import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Page } from '@playwright/test';
import { chromiumOptions } from '../../browser/harness/chromium';
import { makeLibrary, startApp } from '../../e2e/started-app';
import { type ElectronProgram, electronProgram } from '../../shell/electron-program';
import { largeClip } from '../../shell/large-clip';
import { launchShell } from '../../shell/launch-shell';
import { writeSection } from '../write-section';
import { memoryOf, residentOf } from './process-memory';

/**
 * The desktop window against a browser window over loopback, in turns on one screen: from the start to the shelf, from a
 * page that is loaded to a swim's first picture, memory, and adding a clip of 2 GB. SUBMARK_ELECTRON_FOLDER names the
 * folder with Electron's program. Run with tsx; writes its table to the docs.
 */
const rounds = 5;
const swim = 'sample-butterfly-late-kick';
const gigabytes = 2;

/** A window with Submark in it, the programs behind it, and how to end them. */
interface Opened {
  readonly page: Page;
  /** The program that holds the library. */
  readonly host: number;
  /** All programs together: Electron is one with its host, a browser is not. */
  readonly programs: readonly number[];
  end(): Promise<void>;
}
/** What tsx wraps functions in; a page that is handed one has to know it. */
async function knowingNames(page: Page): Promise<Page> {
  const named = 'window.__name = (each) => each';
  await page.addInitScript(named);
  await page.evaluate(named);
  return page;
}

type Way = 'Electron' | 'Chromium over loopback';

async function openElectron(program: ElectronProgram, library: string): Promise<Opened> {
  const { electron, child } = await launchShell(program, library);
  const pid = child.pid ?? 0;
  const gone = new Promise((resolve) => child.once('exit', resolve));
  return {
    page: await knowingNames(await electron.firstWindow()),
    host: pid,
    programs: [pid],
    end: async () => {
      await electron.evaluate(({ app }) => app.quit()).catch(() => undefined);
      await gone;
    },
  };
}

async function openLoopback(library: string): Promise<Opened> {
  const app = await startApp(library);
  const server = await chromium.launchServer({ ...chromiumOptions(), headless: false });
  const browser = await chromium.connect(server.wsEndpoint());
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(app.address);
  return {
    page: await knowingNames(page),
    host: app.pid,
    programs: [app.pid, server.process().pid ?? 0],
    end: async () => {
      await browser.close();
      await server.close();
      await app.stop();
    },
  };
}

/** Milliseconds of the page's own clock from its loading, or from now, until a picture of the swim is shown. */
async function firstPicture(page: Page, from: 'loading' | 'shelf'): Promise<number> {
  if (from === 'loading') await page.reload({ waitUntil: 'commit' });
  return page.evaluate(
    ({ hash, counted }) =>
      new Promise<number>((resolve) => {
        const begun = counted === 'loading' ? 0 : performance.now();
        if (counted === 'shelf') window.location.hash = hash;
        const look = (): void => {
          if (document.querySelector<HTMLElement>('.stage')?.dataset['shownFrame'])
            resolve(performance.now() - begun);
          else requestAnimationFrame(look);
        };
        look();
      }),
    { hash: `#/bench/${swim}`, counted: from },
  );
}

/** Megabytes (10⁶ bytes) of a page's own objects, garbage collected first. */
async function pageMemory(page: Page): Promise<number> {
  const session = await page.context().newCDPSession(page);
  await session.send('HeapProfiler.collectGarbage');
  const { usedSize } = await session.send('Runtime.getHeapUsage');
  await session.detach();
  return usedSize / 1e6;
}

interface Timed {
  readonly start: number;
  readonly loading: number;
  readonly shelf: number;
}

async function times(open: () => Promise<Opened>): Promise<Timed> {
  const begun = performance.now();
  const { page, end } = await open();
  try {
    await page.locator('.swim-tile').first().waitFor();
    const start = performance.now() - begun;
    const shelf = await firstPicture(page, 'shelf');
    return { start, shelf, loading: await firstPicture(page, 'loading') };
  } finally {
    await end();
  }
}

interface Held {
  readonly kinds: ReadonlyMap<string, number>;
  readonly page: number;
}

/** Memory with a swim on the bench, after a walk through 200 of its frames. */
async function memory(open: () => Promise<Opened>): Promise<Held> {
  const { page, programs, end } = await open();
  try {
    await firstPicture(page, 'shelf');
    for (let step = 0; step < 200; step++)
      await page.locator('body').press(step < 100 ? 'ArrowRight' : 'ArrowLeft');
    await page.locator('.stage[data-shown-frame="0"]').waitFor();
    const kinds = new Map<string, number>();
    for (const pid of programs)
      for (const [kind, megabytes] of memoryOf(pid)) kinds.set(kind, (kinds.get(kind) ?? 0) + megabytes);
    return { kinds, page: await pageMemory(page) };
  } finally {
    await end();
  }
}

interface Added {
  readonly seconds: number;
  /** Megabytes that the host held before, and at most meanwhile. */
  readonly before: number;
  readonly most: number;
}

async function adding(open: () => Promise<Opened>, clip: string): Promise<Added> {
  const { page, host, end } = await open();
  try {
    await page.getByLabel('Clips to add').setInputFiles(clip);
    const add = page.getByRole('dialog').getByRole('button', { name: 'Add to the shelf' });
    await add.waitFor();
    const before = residentOf(host);
    let most = before;
    const watch = setInterval(() => {
      most = Math.max(most, residentOf(host));
    }, 100);
    const begun = performance.now();
    await add.click();
    await page.locator('.bench').waitFor({ timeout: 0 });
    clearInterval(watch);
    return { seconds: (performance.now() - begun) / 1000, before, most };
  } finally {
    await end();
  }
}

const middle = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
const spread = (values: readonly number[]): string =>
  `${middle(values).toFixed(0)} (${Math.min(...values).toFixed(0)}–${Math.max(...values).toFixed(0)})`;
const perWay = async <T>(measure: (way: Way) => Promise<T>): Promise<Record<Way, T>> => ({
  Electron: await measure('Electron'),
  'Chromium over loopback': await measure('Chromium over loopback'),
});
const row = (what: string, cells: Record<Way, string>): string =>
  `| ${what} | ${cells.Electron} | ${cells['Chromium over loopback']} |`;
const both = <T>(of: Record<Way, T>, say: (value: T) => string): Record<Way, string> => ({
  Electron: say(of.Electron),
  'Chromium over loopback': say(of['Chromium over loopback']),
});

const root = fileURLToPath(new URL('../../..', import.meta.url));
spawnSync(process.execPath, [path.join(root, 'electron/commands/build.mjs'), '--commonjs'], {
  stdio: 'inherit',
});
const { ownScreen } = (await import(new URL('../../shell/own-screen.mjs', import.meta.url).href)) as {
  ownScreen(): Promise<{ display: string | null; stop(): void }>;
};
const screen = await ownScreen();
if (screen.display) process.env['DISPLAY'] = screen.display;
const program = electronProgram();
const { library, remove } = await makeLibrary(true);
const clip = path.join(path.dirname(library), 'large.mp4');
const open = (way: Way) => () =>
  way === 'Electron' ? openElectron(program, library) : openLoopback(library);
const loads: number[] = [];
try {
  // the first start of each puts samples and caches in place
  await perWay((way) => times(open(way)));
  const timed: Record<Way, Timed[]> = { Electron: [], 'Chromium over loopback': [] };
  for (let round = 0; round < rounds; round++) {
    loads.push(loadavg()[0] ?? Number.NaN);
    const turn = await perWay((way) => times(open(way)));
    timed.Electron.push(turn.Electron);
    timed['Chromium over loopback'].push(turn['Chromium over loopback']);
    console.log(turn);
  }
  const held = await perWay((way) => memory(open(way)));
  console.log(held);
  largeClip(clip, gigabytes);
  const added = await perWay((way) => adding(open(way), clip));
  console.log(added);
  const kinds = [...new Set([...held.Electron.kinds.keys(), ...held['Chromium over loopback'].kinds.keys()])];
  const time = (what: string, key: keyof Timed): string =>
    row(
      what,
      both(timed, (all) => spread(all.map((each) => each[key]))),
    );
  writeSection('window', 'app/window.ts', [
    '## The desktop window against a browser window',
    '',
    `Electron ${program.version} and Chromium over loopback, in turns in one run, both on a screen without graphics hardware, ${cpus().length} processor cores, load ${Math.min(...loads).toFixed(1)}–${Math.max(...loads).toFixed(1)} (other programs and these). Medians of ${rounds} with lowest and highest; *${swim}*.`,
    '',
    '| | Electron | Chromium over loopback |',
    '| --- | --- | --- |',
    time(
      'from the start of the program to the shelf, ms (the second: the start command, the host, then the browser)',
      'start',
    ),
    time('from the shelf to the first picture, ms', 'shelf'),
    time('from loading the page to the first picture, ms', 'loading'),
    ...kinds.map((kind) =>
      row(
        `memory of ${kind === 'main' ? 'main programs (with the host)' : `“${kind}” programs`}, MB`,
        both(held, (each) => each.kinds.get(kind)?.toFixed(0) ?? '–'),
      ),
    ),
    row(
      'of it the page’s own objects, MB',
      both(held, (each) => each.page.toFixed(0)),
    ),
    row(
      `adding a clip of ${gigabytes} GB, s`,
      both(added, ({ seconds }) => seconds.toFixed(1)),
    ),
    row(
      'the host’s memory before, and at most meanwhile, MB',
      both(added, ({ before, most }) => `${before.toFixed(0)}, ${most.toFixed(0)}`),
    ),
    '',
    'Memory: proportional set sizes with a swim on the bench, after 100 steps forward and 100 back, one run. A page’s workers run in its own “renderer” program.',
  ]);
} finally {
  screen.stop();
  rmSync(clip, { force: true });
  if (program.made) rmSync(program.made, { recursive: true, force: true });
  await remove();
}
