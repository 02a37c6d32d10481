import type { EventKind } from '../marks/event-kind';

/** How a kind of event is written: a path about its own instant, 16 units high, and whether it is filled. */
export interface GlyphShape {
  readonly path: string;
  readonly filled: boolean;
}

/**
 * One shape a kind. Hands: triangles point where the hands go (in, back, out), a bar where they pass under the
 * shoulders, a diamond where they meet. Feet: a crest and a trough. Head: ring out, disc in. Course: edges.
 */
export const glyphShapes: Readonly<Record<EventKind, GlyphShape>> = {
  entry: { path: 'M-7.5,-6 L7.5,-6 L0,7.5Z', filled: true },
  catch: { path: 'M6,-7.5 L6,7.5 L-7.5,0Z', filled: true },
  shoulder: { path: 'M-3,-8 h6 v16 h-6Z', filled: true },
  navel: { path: 'M0,-8 L7.5,0 L0,8 L-7.5,0Z', filled: true },
  exit: { path: 'M-7.5,6 L7.5,6 L0,-7.5Z', filled: true },
  'kick-top': { path: 'M-8,4.5 A8,8.5 0 0 1 8,4.5', filled: false },
  'kick-bottom': { path: 'M-8,-4.5 A8,8.5 0 0 0 8,-4.5', filled: false },
  breath: { path: 'M6,0 A6,6 0 1 1 -6,0 A6,6 0 1 1 6,0Z', filled: false },
  'head-in': { path: 'M6.5,0 A6.5,6.5 0 1 1 -6.5,0 A6.5,6.5 0 1 1 6.5,0Z', filled: true },
  breakout: { path: 'M-7,5 H7 M-5,1.5 A5,6 0 0 1 5,1.5', filled: false },
  'push-off': { path: 'M-6,-7.5 V7.5 M-1.5,-5.5 L5,0 L-1.5,5.5', filled: false },
  'distance-mark': { path: 'M-3,8 V-7.5 L6,-4 L-3,-0.5', filled: false },
  touch: { path: 'M6,-7.5 V7.5 M1.5,-5.5 L-5,0 L1.5,5.5', filled: false },
};
