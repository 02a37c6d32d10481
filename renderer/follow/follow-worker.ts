import type { FromFollower, ToFollower } from './follow-message';
import { cameraOf } from './camera-of';
import { followPiece } from './follow-piece';
import type { Vision } from './vision';

/** A classic worker has these; the window's own types don't know them. */
declare function importScripts(address: string): void;
interface Loading {
  readonly Mat?: unknown;
  onRuntimeInitialized?: () => void;
}

const say = (message: FromFollower): void => self.postMessage(message);
/** In a box: the library looks like a promise itself, and a promise of it would wait for ever. */
let opened: Promise<{ readonly vision: Vision }> | null = null;

/** Loads OpenCV: its script starts compiling at once, and says when its functions are there. */
function open(address: string): Promise<{ readonly vision: Vision }> {
  importScripts(address);
  const { cv } = self as unknown as { readonly cv: Vision & Loading };
  return new Promise((resolve) => {
    if ((cv as Loading).Mat) resolve({ vision: cv });
    else cv.onRuntimeInitialized = () => resolve({ vision: cv });
  });
}

async function answer(message: ToFollower): Promise<void> {
  if (message.kind === 'open') {
    opened = open(message.opencv);
    await opened;
    say({ kind: 'opened' });
    return;
  }
  const { id, task } = message;
  if (!opened) throw new Error('nothing can be followed before OpenCV is loaded');
  let steps = 0;
  let said = 0;
  const found = followPiece((await opened).vision, task, () => {
    steps += 1;
    if (steps - said < 8) return;
    said = steps;
    say({ kind: 'step', id, steps });
  });
  const camera = cameraOf((await opened).vision, task, found.runs);
  say({ kind: 'done', id, found: { ...found, camera } });
}

self.onmessage = (event: MessageEvent<ToFollower>) => {
  answer(event.data).catch((problem: unknown) => say({ kind: 'failed', reason: String(problem) }));
};
