import type { FrameTable } from '#core/timeline/frame-table';
import type { ClipFacts } from '../video/frame-source';

const short = (value: number): string => Number(value.toPrecision(4)).toString();

/** "59.94 a second, constant"; a variable rate gives its usual value. */
export function rateWords(
  facts: Pick<ClipFacts, 'rate' | 'evenRate'> & Partial<Pick<ClipFacts, 'fields'>>,
): string {
  if (facts.fields) return `${short(facts.rate)} fields a second, each shown as a picture`;
  return facts.evenRate
    ? `${short(facts.rate)} a second, constant`
    : `about ${short(facts.rate)} a second, variable`;
}

/** Length as played, and in life where the clip is slowed down. */
export function lengthWords(table: FrameTable, slowdown: number | null): string {
  const played = (table.endTick - (table.starts[0] ?? 0)) / table.ticksPerSecond;
  const text = `${played.toFixed(1)} s`;
  return slowdown === null || slowdown === 1
    ? text
    : `${text} played, ${(played / slowdown).toFixed(1)} s in life`;
}

/** Decimal units, as cameras and disks count. */
export function bytesWords(bytes: number): string {
  if (bytes < 1e6) return `${Math.max(1, Math.round(bytes / 1e3))} kB`;
  if (bytes < 1e9) return `${(bytes / 1e6).toFixed(1)} MB`;
  return `${(bytes / 1e9).toFixed(2)} GB`;
}
