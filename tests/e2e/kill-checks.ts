import { readdirSync, readFileSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import path from 'node:path';
import { loadImage } from '@napi-rs/canvas';
import type { Page } from '@playwright/test';
import { execa } from 'execa';
import { parseSwim } from '#core/swim-file/swim-file';
import { fileUnderWork } from './kill-activities';

/** Marks on the score at one moment, as text that equals the file's when they agree. */
export interface Seen {
  readonly at: number;
  readonly marks: string;
}

const marksOf = (marks: readonly (readonly [string, number])[]): string =>
  marks
    .map(([id, frame]) => `${id}@${frame}`)
    .sort()
    .join(' ');

/** What the score shows now. */
export async function look(page: Page): Promise<Seen> {
  const marks = await page
    .locator('.glyph[data-event]')
    .evaluateAll((glyphs) =>
      glyphs.map((each): [string, number] => [
        each.getAttribute('data-event') ?? '',
        Number(each.getAttribute('data-frame')),
      ]),
    );
  return { at: Date.now(), marks: marksOf(marks) };
}

/** What the file holds, and what is wrong with it. */
export function marksOnDisk(library: string): { readonly marks: string; readonly fault: string | null } {
  const parsed = parseSwim(readFileSync(fileUnderWork(library), 'utf8'));
  return parsed.ok
    ? { marks: marksOf(parsed.value.events.map(({ id, frame }) => [id, frame])), fault: null }
    : { marks: '', fault: parsed.fault.code };
}

async function wholePicture(file: string): Promise<boolean> {
  return loadImage(file).then(
    ({ width, height }) => width > 0 && height > 0,
    () => false,
  );
}

/** Decodes all of it; a video cut short has no index or ends in an error. */
async function wholeFilm(file: string): Promise<boolean> {
  const run = await execa('ffmpeg', ['-v', 'error', '-xerror', '-i', `file:${file}`, '-f', 'null', '-'], {
    reject: false,
    stdin: 'ignore',
  });
  return run.exitCode === 0 && run.stderr === '';
}

const namesIn = (folder: string): readonly string[] => {
  try {
    return readdirSync(folder);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw error;
  }
};

/** How many of each kind were found whole so far. */
export interface Made {
  stills: number;
  videos: number;
  copies: number;
}

/**
 * Looks at everything new that bears a final name: stills, videos, working copies. Each is decoded whole, once; copies
 * are then taken away, so that the next one is made anew.
 */
export function createExportCheck(library: string, made: Made): () => Promise<readonly string[]> {
  const known = new Set<string>();
  return async () => {
    const faults: string[] = [];
    const exports = path.join(library, 'exports');
    for (const name of namesIn(exports)) {
      if (name.startsWith('.') || known.has(name)) continue;
      known.add(name);
      const still = name.endsWith('.png');
      const file = path.join(exports, name);
      if (await (still ? wholePicture(file) : wholeFilm(file))) made[still ? 'stills' : 'videos'] += 1;
      else faults.push(`${name} is half ${still ? 'a picture' : 'a video'}`);
    }
    const copies = path.join(library, '.cache', 'copies');
    for (const name of namesIn(copies).filter((each) => each.endsWith('.film'))) {
      const file = path.join(copies, name);
      if (await wholeFilm(file)) made.copies += 1;
      else faults.push(`${name} is half a working copy`);
      await rm(file, { force: true });
    }
    return faults;
  };
}
