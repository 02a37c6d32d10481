import { readingsAside } from './readings-aside';

/** The window's own worker for whole swims. */
export const aside = readingsAside(
  () => new Worker(new URL('./aside-worker.ts', import.meta.url), { type: 'module' }),
);
