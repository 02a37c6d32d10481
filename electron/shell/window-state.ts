import { readFileSync } from 'node:fs';
import type { BrowserWindow, Rectangle } from 'electron';
import writeFileAtomic from 'write-file-atomic';
import { z } from 'zod';

/** The window is never made smaller: below this the bench's parts lie over each other. */
export const smallest = { width: 1024, height: 640 } as const;

const schema = z.strictObject({
  x: z.number().int().optional(),
  y: z.number().int().optional(),
  width: z.number().int().min(smallest.width).max(20_000),
  height: z.number().int().min(smallest.height).max(20_000),
  maximised: z.boolean().optional(),
  /** By how much the window manager puts a window beside the place asked for. */
  lean: z.strictObject({ x: z.number().int(), y: z.number().int() }).optional(),
  /** Colour behind the page, `#rrggbb`, and whether it is a dark one. */
  ground: z
    .string()
    .regex(/^#[0-9a-f]{6}$/)
    .optional(),
  dark: z.boolean().optional(),
});
export type WindowState = z.infer<typeof schema>;

/** As the page looks before anybody has chosen another look. */
export const firstGround = { ground: '#0d171c', dark: true } as const;
const fresh: WindowState = { width: 1440, height: 900 };

/** Pixels of a window's top that must be on a screen, so that it can be seen and moved. Our own. */
const topSeen = { width: 200, height: 40 } as const;

/**
 * How the window stood last time; a fresh place when the file is missing or unrecognised, or when no screen shows enough of
 * the window's top any more. A window larger than its screen is made to fit.
 */
export function readWindowState(file: string, screens: readonly Rectangle[]): WindowState {
  let state: WindowState;
  try {
    state = schema.parse(JSON.parse(readFileSync(file, 'utf8')));
  } catch {
    // the window's place is worth no message
    return fresh;
  }
  const { x, y, ...placeless } = state;
  const { width, height } = state;
  if (x === undefined || y === undefined) return placeless;
  const shownOn = screens.find((each) => {
    const across = Math.min(x + width, each.x + each.width) - Math.max(x, each.x);
    const down = Math.min(y + topSeen.height, each.y + each.height) - y;
    return across >= topSeen.width && y >= each.y && down >= topSeen.height;
  });
  if (!shownOn) return placeless;
  return {
    ...state,
    width: Math.max(smallest.width, Math.min(width, shownOn.width)),
    height: Math.max(smallest.height, Math.min(height, shownOn.height)),
  };
}

/** Where to ask for, so that the window manager puts the window at its own place. */
export function placeToAsk({ x, y, lean }: WindowState): { x?: number; y?: number } {
  return x === undefined || y === undefined ? {} : { x: x - (lean?.x ?? 0), y: y - (lean?.y ?? 0) };
}

/** No frame is thicker: a window found farther from its place was moved by somebody. Our own. */
const thickestFrame = 120;

export interface KeptWindow {
  /** The colour behind the page, for the next start. */
  ground(ground: string, dark: boolean): void;
}

/**
 * Keeps the window's place, size and whether it is maximised, at its end. Under X11 a window is placed by its frame and
 * told of by what is inside it, so that it would be lower at each start: how far it leans is measured once and kept.
 */
export function keepWindowState(file: string, window: BrowserWindow, state: WindowState): KeptWindow {
  let { lean, ground, dark } = state;
  const measure = (): void => {
    if (window.isDestroyed() || window.isMaximized() || window.isFullScreen()) return;
    const { x, y } = window.getNormalBounds();
    const off = { x: x - (state.x ?? x), y: y - (state.y ?? y) };
    if (off.x === 0 && off.y === 0) return;
    if (Math.abs(off.x) > thickestFrame || Math.abs(off.y) > thickestFrame) return;
    lean = { x: (lean?.x ?? 0) + off.x, y: (lean?.y ?? 0) + off.y };
    const asked = placeToAsk({ ...state, lean });
    if (asked.x !== undefined && asked.y !== undefined) window.setPosition(asked.x, asked.y);
  };
  // the first move is the window manager's, at once after the window is shown
  if (process.platform === 'linux' && state.x !== undefined && !state.maximised) window.once('move', measure);
  window.on('close', () => {
    const { x, y, width, height } = window.getNormalBounds();
    const kept: WindowState = {
      ...{ x, y, width: Math.max(width, smallest.width), height: Math.max(height, smallest.height) },
      maximised: window.isMaximized(),
      ...(lean ? { lean } : {}),
      ...(ground === undefined || dark === undefined ? {} : { ground, dark }),
    };
    try {
      writeFileAtomic.sync(file, JSON.stringify(kept));
    } catch (error) {
      console.error('the window’s place could not be kept', error);
    }
  });
  return {
    ground(newGround, newDark) {
      ground = newGround;
      dark = newDark;
    },
  };
}
