import { createRequire } from 'node:module';
import type { Vision } from '#core/follow/vision';
import { type OpenCv, opencvVision } from '../../../renderer/vision/opencv-vision';

/** The app's vision, once OpenCV's functions are there: its script says when. */
export async function openVision(): Promise<Vision> {
  const cv = createRequire(import.meta.url)('@techstark/opencv-js') as OpenCv & {
    Mat?: unknown;
    onRuntimeInitialized?: () => void;
  };
  if (!cv.Mat) {
    await new Promise<void>((resolve) => {
      cv.onRuntimeInitialized = () => resolve();
    });
  }
  return opencvVision(cv);
}
