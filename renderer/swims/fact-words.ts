import type { FrameTable } from '#core/timeline/frame-table';
import type { ClipFacts } from '../video/frame-source';
import { swimsWords } from '#core/words/swims';

const short = (value: number): string => Number(value.toPrecision(4)).toString();

/** "59.94 a second, constant"; a variable rate gives its usual value. */
export function rateWords(
  facts: Pick<ClipFacts, 'rate' | 'evenRate'> & Partial<Pick<ClipFacts, 'fields'>>,
): string {
  if (facts.fields) return swimsWords('fieldsSecondEach', { short: short(facts.rate) });
  return facts.evenRate
    ? swimsWords('secondConstant', { short: short(facts.rate) })
    : swimsWords('aboutSecondVariable', { short: short(facts.rate) });
}

/** Length as played, and in life where the clip is slowed down. */
export function lengthWords(table: FrameTable, slowdown: number | null): string {
  const played = (table.endTick - (table.starts[0] ?? 0)) / table.ticksPerSecond;
  const text = `${played.toFixed(1)} s`;
  return slowdown === null || slowdown === 1
    ? text
    : swimsWords('playedSLife', { text, played: (played / slowdown).toFixed(1) });
}

/** Decimal units, as cameras and disks count. */
export function bytesWords(bytes: number): string {
  if (bytes < 1e6) return swimsWords('kb', { value: Math.max(1, Math.round(bytes / 1e3)) });
  if (bytes < 1e9) return swimsWords('mb', { bytes: (bytes / 1e6).toFixed(1) });
  return swimsWords('gb', { bytes: (bytes / 1e9).toFixed(2) });
}
