import { backgroundReadings } from './background-readings';

/** The window's own worker for whole swims. */
export const background = backgroundReadings(
  () => new Worker(new URL('./background-worker.ts', import.meta.url), { type: 'module' }),
);
