import { createRequire } from 'node:module';
import type { Vision } from '../../renderer/follow/vision';

/**
 * OpenCV as the app has it, once its functions are there: its script says when. In a box, since the library looks like a
 * promise itself, and a promise of it would wait for ever.
 */
export async function openVision(): Promise<{ readonly vision: Vision }> {
  const vision = createRequire(import.meta.url)('@techstark/opencv-js') as Vision & {
    Mat?: unknown;
    onRuntimeInitialized?: () => void;
  };
  if (!vision.Mat) {
    await new Promise<void>((resolve) => {
      vision.onRuntimeInitialized = () => resolve();
    });
  }
  return { vision };
}
