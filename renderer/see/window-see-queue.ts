import { windowMemory } from '../host/window-memory';
import { createSeeQueue } from './see-queue';

/** The queue of this window. */
export const windowSeeQueue = createSeeQueue(windowMemory);
