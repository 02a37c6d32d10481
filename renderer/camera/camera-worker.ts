import type { Point } from '#core/units/point';
import { loadVision } from '../vision/load-vision';
import { cameraMoves, cameraStood } from '../../shared-core/follow/camera-moves';
import type { FromLooker, ToLooker } from './look-message';

const say = (message: FromLooker): void => self.postMessage(message);

async function answer({ opencv, task }: ToLooker): Promise<void> {
  const vision = await loadVision(opencv);
  const bodies = new Map<number, readonly Point[]>(
    task.pictures.map(({ frame }, i) => [frame, task.bodies[i] ?? []]),
  );
  const look = task.onlyStood ? cameraStood : cameraMoves;
  say({
    kind: 'done',
    run: look(vision, task.pictures, (frame) => bodies.get(frame) ?? [], task.bodyLength),
  });
}

self.onmessage = (event: MessageEvent<ToLooker>) => {
  answer(event.data).catch((problem: unknown) => say({ kind: 'failed', reason: String(problem) }));
};
