import type { Result } from '#core/host-contract/host-error';
import type { Still } from '#core/host-contract/operations/media-operations';
import { clampFrame } from '#core/timeline/frame-table';
import type { FrameSource } from './frame-source';
import { PictureLost } from './picture-lost';
import { createStillsSource } from './stills-source';

/** Room for pictures that the host's tools made: eight of 1080p. They are few, and quickly made again (our default). */
const stillsBudget = 64 * 2 ** 20;

export interface Mending {
  /** A frame of the clip itself, made by the host's tools, which patch up damage. */
  readonly ask: (frame: number) => Promise<Result<readonly Still[]>>;
  /** How many frames this window could not decode so far. */
  readonly onBroken?: ((frames: number) => void) | undefined;
}

/** A film whose frames come from the host's tools where this window can't decode them; a frame neither can show is lost. */
export function mendedSource(source: FrameSource, { ask, onBroken }: Mending): FrameSource {
  const broken = new Set<number>();
  let stills: FrameSource | null = null;
  let requests = 0;
  return {
    ...source,
    held: (frame) => source.held(frame) ?? stills?.held(frame) ?? null,
    async show(frame, towards, onWhole) {
      requests += 1;
      const request = requests;
      const made = stills?.held(clampFrame(source.facts.table, frame));
      if (made) return made;
      try {
        return await source.show(frame, towards, onWhole);
      } catch (problem) {
        if (!(problem instanceof PictureLost) || problem.unreadable) throw problem;
        broken.add(problem.frame);
        onBroken?.(broken.size);
        if (request !== requests) throw new DOMException('A newer frame was asked for', 'AbortError');
        stills ??= createStillsSource({
          facts: source.facts,
          ask: (_around, asked) => ask(asked),
          budgetBytes: stillsBudget,
        });
        return await stills.show(problem.frame, 0);
      }
    },
    close() {
      stills?.close();
      source.close();
    },
  };
}
