import type { Vision } from '#core/follow/vision';
import { type OpenCv, opencvVision } from './opencv-vision';

/** A classic worker has these; the window's own types don't know them. */
declare function importScripts(address: string): void;
interface Loading {
  readonly Mat?: unknown;
  onRuntimeInitialized?: () => void;
}

/**
 * Loads OpenCV in a worker: its script starts compiling at once, and says when its functions are there. The library itself looks
 * like a promise, so no promise may hold it: what comes back is our own.
 */
export function loadVision(address: string): Promise<Vision> {
  importScripts(address);
  const { cv } = self as unknown as { readonly cv: OpenCv & Loading };
  return new Promise((resolve) => {
    if ((cv as Loading).Mat) resolve(opencvVision(cv));
    else cv.onRuntimeInitialized = () => resolve(opencvVision(cv));
  });
}
