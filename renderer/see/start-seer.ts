import files from 'virtual:see-files';
import { createSeer, type Seer } from './seer';

/** The seer of the running app. */
export const startSeer = (): Seer =>
  createSeer(() => new Worker(new URL('./see-worker.ts', import.meta.url)), files);
