import { spawn } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { _electron, chromium, expect, type Page, test } from '@playwright/test';
import { parseSwim } from '#core/swim-file/swim-file';
import { makeLibrary } from './started-app';

const root = fileURLToPath(new URL('../..', import.meta.url));
const shell = path.join(root, '.build', 'electron', 'main.js');
const swimId = 'sample-phone-portrait';

const savedEvents = (library: string): number => {
  const parsed = parseSwim(readFileSync(path.join(library, 'swims', swimId, 'swim.json'), 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  return parsed.value.events.length;
};

/** What a coach does first, in whichever window the shell has opened. */
async function markAndSave(page: Page, library: string): Promise<void> {
  await expect(page.getByRole('heading', { name: 'Shelf' })).toBeVisible();
  expect(
    await page.evaluate(() => Object.keys((window as { submarkHost?: object }).submarkHost ?? {})),
  ).toEqual(['run', 'pathOf']);
  await page.evaluate((id) => {
    window.location.hash = `#/bench/${id}`;
  }, swimId);
  await expect(page.locator('.where')).toBeVisible();
  await expect(page.locator('.stage')).toHaveAttribute('data-shown-frame', /\d/);
  await page.locator('body').press('ArrowRight');
  await expect(page.locator('.stage')).toHaveAttribute('data-shown-frame', '1');
  await page.locator('body').press('a');
  await expect.poll(() => savedEvents(library)).toBe(1);
  await page.locator('body').press('i');
  await page.getByRole('dialog').getByRole('button', { name: /save/i }).click();
  await expect
    .poll(() => readdirSync(path.join(library, 'exports')).filter((name) => name.endsWith('.png')).length)
    .toBe(1);
  await page.keyboard.press('Escape');
}

test('what was built for the package is in it: shell, host’s thread, page, workers, OpenCV, letters', async () => {
  test.skip(!existsSync(shell), 'the shell is not built: run npm run build first');
  const { packedFiles } = (await import(
    pathToFileURL(path.join(root, 'electron', 'commands', 'packed-files.mjs')).href
  )) as { packedFiles(): { inside: string[] } };
  const built = packedFiles().inside.filter((file) => file.startsWith('.build/'));
  for (const wanted of [
    ...[/electron\/main\.js$/, /electron\/preload\.cjs$/, /electron\/reading-thread\.js$/],
    ...[/renderer\/index\.html$/, /assets\/index-\S+\.js$/, /assets\/index-\S+\.css$/],
    ...[
      /assets\/film-worker-\S+\.js$/,
      /assets\/decoder-worker-\S+\.js$/,
      /assets\/follow-worker-\S+\.js$/,
      /assets\/opencv-\S+\.js$/,
    ],
    ...[/Inter_400Regular-\S+\.ttf$/, /Inter_600SemiBold-\S+\.ttf$/],
  ])
    expect(
      built.filter((file) => wanted.test(file)),
      String(wanted),
    ).toHaveLength(1);
});

test('the shell’s own bundle, preload and host open a window, mark, save and end in order', async () => {
  test.skip(!existsSync(shell), 'the shell is not built: run npm run build first');
  const { library, remove } = await makeLibrary(true);
  const program = spawn(
    process.execPath,
    [
      '--import',
      'tsx',
      '--import',
      pathToFileURL(path.join(root, 'tests/e2e/electron-stand-in/register.mjs')).href,
      shell,
    ],
    {
      cwd: root,
      env: {
        ...process.env,
        SUBMARK_LIBRARY: library,
        SUBMARK_SAMPLES: 'few',
        SUBMARK_USER_DATA: path.dirname(library),
      },
    },
  );
  let words = '';
  program.stdout.on('data', (chunk: Buffer) => {
    words += chunk.toString();
  });
  program.stderr.on('data', (chunk: Buffer) => {
    words += chunk.toString();
  });
  const ended = new Promise<number | null>((resolve) => program.once('exit', resolve));
  try {
    await expect.poll(() => words, { timeout: 60_000 }).toMatch(/window: http:\S+/);
    const address = /window: (http:\S+)/.exec(words)?.[1] ?? '';
    const browser = await chromium.connectOverCDP(address);
    const page = browser.contexts()[0]?.pages()[0];
    if (!page) throw new Error('the shell opened no window');
    await markAndSave(page, library);
    await browser.close();
    program.kill('SIGTERM');
    expect(await ended).toBe(0);
  } finally {
    program.kill('SIGKILL');
    await remove();
  }
});

test('Electron itself opens the same window, marks and saves', async () => {
  const name = path.join(root, 'node_modules', 'electron', 'path.txt');
  const program = existsSync(name)
    ? path.join(root, 'node_modules', 'electron', 'dist', readFileSync(name, 'utf8').trim())
    : '';
  test.skip(!existsSync(program), 'Electron’s program is not on this machine: its own window was not tried');
  const { library, remove } = await makeLibrary(true);
  const electron = await _electron.launch({
    executablePath: program,
    args: [shell],
    env: { ...process.env, SUBMARK_LIBRARY: library, SUBMARK_SAMPLES: 'few' } as Record<string, string>,
  });
  try {
    await markAndSave(await electron.firstWindow(), library);
  } finally {
    await electron.close();
    await remove();
  }
});
