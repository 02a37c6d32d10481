import type { SeenFrame } from '#core/see/seen-runs';
import type { Square } from '#core/see/square';
import type { FrameSource } from '../video/frame-source';
import { picturePixels } from './picture-pixels';
import type { Glance } from './see-message';
import type { Seer } from './seer';

/** What came of looking through a film. */
export type SeenFilm =
  | { readonly kind: 'seen'; readonly frames: readonly SeenFrame[]; readonly looked: number }
  | { readonly kind: 'several'; readonly frame: number; readonly squares: readonly Square[] };

/**
 * Looks at every picture of a film in turn: while the worker looks at one, the next is decoded. `onLooked` is called with how many
 * were looked at. Ends at once where several swimmers are seen and nobody has said which.
 */
export async function seeFilm(
  source: FrameSource,
  frames: number,
  timeOf: (frame: number) => number,
  seer: Seer,
  onLooked: (count: number) => void,
  signal: AbortSignal,
): Promise<SeenFilm> {
  let looking: { readonly frame: number; readonly glance: Promise<Glance> } | null = null;
  const looked = async (): Promise<SeenFilm | null> => {
    if (!looking) return null;
    const glance = await looking.glance;
    onLooked(looking.frame + 1);
    return glance.kind === 'several'
      ? { kind: 'several', frame: looking.frame, squares: glance.squares }
      : null;
  };
  for (let frame = 0; frame < frames; frame++) {
    signal.throwIfAborted();
    const pixels = picturePixels(await source.show(frame, 1));
    const several = await looked();
    if (several) return several;
    const glance = seer.look(frame, timeOf(frame), pixels);
    // its failure is heard when it is waited for, after the next picture is decoded
    glance.catch(() => undefined);
    looking = { frame, glance };
  }
  const several = await looked();
  if (several) return several;
  signal.throwIfAborted();
  return { kind: 'seen', frames: await seer.lay(), looked: frames };
}
