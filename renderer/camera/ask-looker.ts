import opencv from 'virtual:opencv-address';
import type { CameraRun } from '#core/swim-file/swim-schema';
import { askedWorker } from '../workers/ask-worker';
import type { WorkerPatience } from '../workers/watched-worker';
import type { CameraTask, FromLooker, ToLooker } from './look-message';
import { cameraWords } from '#core/words/camera';

/** Five minutes, our choice: it says nothing until it is done. */
const lookerPatience: WorkerPatience = { checkMs: 1000, silentChecks: 300 };

/**
 * Has a worker look at the camera, and lets it go: it is seldom asked. Null where too little can be told. Rejects with an
 * AbortError when stopped, with an Error when the worker fails.
 */
export async function askLooker(task: CameraTask, signal: AbortSignal): Promise<CameraRun | null> {
  signal.throwIfAborted();
  const worker = askedWorker<ToLooker, FromLooker>(
    new Worker(new URL('./camera-worker.ts', import.meta.url)),
    lookerPatience,
  );
  try {
    return await worker.ask(
      {
        message: { opencv, task },
        transfer: task.pictures.map(({ grey }) => grey.buffer),
        stopped: cameraWords('lookingAtCamera'),
        hear(told) {
          if (told.kind === 'failed') throw new Error(told.reason);
          return told.run;
        },
      },
      signal,
    );
  } finally {
    worker.end();
  }
}
