import { cameraOf } from '../../shared-core/follow/camera-of';
import type { FromFollower, ToFollower } from './follow-message';
import { followPiece } from '../../shared-core/follow/follow-piece';
import { loadVision } from '../vision/load-vision';

const say = (message: FromFollower): void => self.postMessage(message);
let opened: ReturnType<typeof loadVision> | null = null;

async function answer(message: ToFollower): Promise<void> {
  if (message.kind === 'open') {
    opened = loadVision(message.opencv);
    await opened;
    say({ kind: 'opened' });
    return;
  }
  const { id, task } = message;
  if (!opened) throw new Error('nothing can be followed before OpenCV is loaded');
  let steps = 0;
  let said = 0;
  const found = followPiece(await opened, task, () => {
    steps += 1;
    if (steps - said < 8) return;
    said = steps;
    say({ kind: 'step', id, steps });
  });
  const camera = cameraOf(await opened, task, found.runs);
  say({ kind: 'done', id, found: { ...found, camera } });
}

self.onmessage = (event: MessageEvent<ToFollower>) => {
  answer(event.data).catch((problem: unknown) => say({ kind: 'failed', reason: String(problem) }));
};
