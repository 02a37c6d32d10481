import opencv from 'virtual:opencv-address';
import type { CameraRun } from '#core/swim-file/swim-schema';
import type { CameraTask, FromLooker, ToLooker } from './look-message';

/**
 * Has a worker look at the camera, and lets it go: it is seldom asked. Null where too little can be told. Rejects with an
 * AbortError when stopped, with an Error when the worker fails.
 */
export function askLooker(task: CameraTask, signal: AbortSignal): Promise<CameraRun | null> {
  signal.throwIfAborted();
  const worker = new Worker(new URL('./camera-worker.ts', import.meta.url));
  return new Promise<CameraRun | null>((resolve, reject) => {
    const stop = (): void => reject(new DOMException('Looking at the camera was stopped', 'AbortError'));
    signal.addEventListener('abort', stop, { once: true });
    worker.onmessage = ({ data }: MessageEvent<FromLooker>) => {
      if (data.kind === 'done') resolve(data.run);
      else reject(new Error(data.reason));
    };
    worker.onerror = (event) => reject(new Error(event.message || 'the worker could not start'));
    const message: ToLooker = { opencv, task };
    worker.postMessage(
      message,
      task.pictures.map(({ grey }) => grey.buffer),
    );
  }).finally(() => worker.terminate());
}
