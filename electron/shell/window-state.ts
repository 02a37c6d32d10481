import { readFileSync } from 'node:fs';
import type { BrowserWindow, Rectangle } from 'electron';
import writeFileAtomic from 'write-file-atomic';
import { z } from 'zod';

const schema = z.strictObject({
  x: z.number().int().optional(),
  y: z.number().int().optional(),
  width: z.number().int().min(1024).max(20_000),
  height: z.number().int().min(640).max(20_000),
});
export interface WindowState {
  readonly width: number;
  readonly height: number;
  readonly x?: number;
  readonly y?: number;
}
const fresh: WindowState = { width: 1440, height: 900 };

/**
 * Where the window was last time; a fresh place when the file is missing or strange, or when no screen shows the
 * window's top left corner any more.
 */
export function readWindowState(file: string, screens: readonly Rectangle[]): WindowState {
  let state: z.infer<typeof schema>;
  try {
    state = schema.parse(JSON.parse(readFileSync(file, 'utf8')));
  } catch {
    // the window's place is worth no message
    return fresh;
  }
  const { x, y, width, height } = state;
  if (x === undefined || y === undefined) return { width, height };
  const seen = screens.some(
    (each) => x >= each.x && x < each.x + each.width && y >= each.y && y < each.y + each.height,
  );
  return seen ? { x, y, width, height } : { width, height };
}

export function keepWindowState(file: string, window: BrowserWindow): void {
  window.on('close', () => {
    try {
      writeFileAtomic.sync(file, JSON.stringify(window.getNormalBounds()));
    } catch (error) {
      console.error('the window’s place could not be kept', error);
    }
  });
}
