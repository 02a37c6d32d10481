import { errorWords } from '#core/host-contract/error-words';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { sameStarts } from '#core/timeline/same-starts';
import type { OpenFrameSource } from '../video/frame-source';
import type { BenchSession } from './bench-session';

/** Opens the swim's clip, but shows it only when its frames are the ones the marks were made on. */
export async function openFilm(
  session: BenchSession,
  clipStatus: 'present' | 'missing' | 'changed',
  openFrameSource: OpenFrameSource,
  signal: AbortSignal,
): Promise<void> {
  const { film, host, document } = session;
  if (clipStatus !== 'present') {
    film.setState({ source: null, reopen: null, trouble: { kind: clipStatus } });
    return;
  }
  const { id, clip } = document.swim();
  const open = (budgetBytes: number | null, until: AbortSignal): ReturnType<OpenFrameSource> =>
    openFrameSource(
      { address: host.clipAddress(id) },
      { signal: until, ...(budgetBytes === null ? {} : { budgetBytes }) },
    );
  const result = await open(null, signal);
  if (signal.aborted) {
    if (result.ok) result.value.close();
    return;
  }
  if (!result.ok) {
    const { what, todo } = errorWords(result.error);
    film.setState({ source: null, reopen: null, trouble: { kind: 'unreadable', words: `${what} ${todo}` } });
    return;
  }
  const source = result.value;
  const { facts } = source;
  const same =
    facts.width === clip.width &&
    facts.height === clip.height &&
    // half a tick: each start was rounded to the coarser clock once
    sameStarts(facts.table, tableFromRecord(clip.frameTimes), 0.5);
  if (!same) {
    source.close();
    film.setState({ source: null, reopen: null, trouble: { kind: 'changed' } });
    return;
  }
  film.setState({ source, trouble: null, reopen: open });
}
