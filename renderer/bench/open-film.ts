import { errorWords } from '#core/host-contract/error-words';
import type { FrameTable } from '#core/timeline/frame-table';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import type { OpenFrameSource } from '../video/frame-source';
import type { BenchSession } from './bench-session';

/** Whether two tables show the same pictures at the same times; ticks may be scaled differently. */
export function sameFrames(one: FrameTable, other: FrameTable): boolean {
  if (one.starts.length !== other.starts.length) return false;
  const first = { one: one.starts[0] ?? 0, other: other.starts[0] ?? 0 };
  // half a tick of the coarser clock: each start was rounded to it once
  const slack = 0.5 / Math.min(one.ticksPerSecond, other.ticksPerSecond) + 1e-9;
  return one.starts.every((start, index) => {
    const mine = (start - first.one) / one.ticksPerSecond;
    const theirs = ((other.starts[index] ?? 0) - first.other) / other.ticksPerSecond;
    return Math.abs(mine - theirs) <= slack;
  });
}

/** Opens the swim's clip, but shows it only when its frames are the ones the marks were made on. */
export async function openFilm(
  session: BenchSession,
  clipStatus: 'present' | 'missing' | 'changed',
  openFrameSource: OpenFrameSource,
  signal: AbortSignal,
): Promise<void> {
  const { film, host, document } = session;
  if (clipStatus !== 'present') {
    film.setState({ source: null, trouble: { kind: clipStatus } });
    return;
  }
  const { id, clip } = document.swim();
  const result = await openFrameSource({ address: host.clipAddress(id) }, { signal });
  if (signal.aborted) {
    if (result.ok) result.value.close();
    return;
  }
  if (!result.ok) {
    const { what, todo } = errorWords(result.error);
    film.setState({ source: null, trouble: { kind: 'unreadable', words: `${what} ${todo}` } });
    return;
  }
  const source = result.value;
  const { facts } = source;
  const same =
    facts.width === clip.width &&
    facts.height === clip.height &&
    sameFrames(facts.table, tableFromRecord(clip.frameTimes));
  if (!same) {
    source.close();
    film.setState({ source: null, trouble: { kind: 'changed' } });
    return;
  }
  film.setState({ source, trouble: null });
}
