import opencv from 'virtual:opencv-address';
import { createFollower, type Follower } from './follower';

/** The follower of the running app. */
export function startFollower(): Follower {
  return createFollower(() => new Worker(new URL('./follow-worker.ts', import.meta.url)), opencv);
}
