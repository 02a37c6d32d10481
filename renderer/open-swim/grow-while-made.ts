import type { FrameRange } from '#core/timeline/frame-range';
import { success } from '#core/host-contract/host-error';
import { factsOfClip } from '../video/facts-of-clip';
import type { FrameSource, OpenFrameSource } from '../video/frame-source';
import { createGrowingSource, type GrowingSource } from '../video/growing-source';
import { pictureBudget } from '../video/open-frame-source';
import { createStillsSource } from '../video/stills-source';
import type { OpenSwim, Copying } from './open-swim';

/** Our default: how often the host is told where the coach is, and asked what is made. */
const everyMs = 300;

/** Every frame of a swim's clip as a still by the host's tools: slow, and there for a film that has no other pictures. */
export function stillsOf({ host, document }: OpenSwim, signal: AbortSignal): FrameSource {
  const { id, clip } = document.swim();
  return createStillsSource({
    facts: factsOfClip(clip),
    ask: async (around, asked) => {
      const answer = await host.call('copy/stills', { id, around, asked }, signal);
      return answer.ok ? success(answer.value.stills) : answer;
    },
    budgetBytes: pictureBudget,
  });
}

/**
 * Shows what there is of a working copy while it is made: its pieces where they are there, and elsewhere the clip itself, or
 * stills by the host's tools where this window can't decode it. Goes on until `over`; tells the host where the coach is, so
 * that those pieces are made first.
 */
export async function growWhileMade(
  session: OpenSwim,
  open: OpenFrameSource,
  why: Copying['why'],
  signal: AbortSignal,
  over: AbortSignal,
): Promise<void> {
  const { film, host, view, document } = session;
  const { id } = document.swim();
  let growing: GrowingSource | null = null;
  let shown = '';

  const begin = (beyond: FrameSource): GrowingSource => {
    const source = createGrowingSource({
      beyond,
      open: (piece, standsFor, budgetBytes) =>
        open({ address: host.copyPieceAddress(id, piece.first) }, { budgetBytes, standsFor, signal }),
    });
    film.setState({ source });
    return source;
  };
  const tell = (pieces: readonly FrameRange[]): void => {
    const { source, copying, trouble } = film.getState();
    // the film may have gone and come back meanwhile: then what shows it now is begun on
    if (growing === null || source !== growing) {
      growing = null;
      if (source && pieces.length > 0) growing = begin(source);
      else if (!source && !trouble && why === 'needed') growing = begin(stillsOf(session, signal));
      shown = '';
    }
    const now = JSON.stringify(pieces);
    if (now === shown || !copying) return;
    shown = now;
    growing?.grow(pieces);
    film.setState({ copying: { ...copying, pieces } });
  };

  tell([]);
  while (!over.aborted) {
    const told = await host.call('copy/watch', { id, frame: view.getState().frame });
    if (over.aborted) return;
    if (told.ok) tell(told.value.pieces);
    await new Promise((resolve) => setTimeout(resolve, everyMs));
  }
}
