import type { Vision } from './vision';

/** A classic worker has these; the window's own types don't know them. */
declare function importScripts(address: string): void;
interface Loading {
  readonly Mat?: unknown;
  onRuntimeInitialized?: () => void;
}

/**
 * Loads OpenCV in a worker: its script starts compiling at once, and says when its functions are there. In a box: the library
 * looks like a promise itself, and a promise of it would wait for ever.
 */
export function loadVision(address: string): Promise<{ readonly vision: Vision }> {
  importScripts(address);
  const { cv } = self as unknown as { readonly cv: Vision & Loading };
  return new Promise((resolve) => {
    if ((cv as Loading).Mat) resolve({ vision: cv });
    else cv.onRuntimeInitialized = () => resolve({ vision: cv });
  });
}
