import type { Seen } from '../browser/harness/page';
import { readSection, writeSection } from './write-section';

/** One way of stepping over one clip. */
export interface Row {
  readonly clip: string;
  readonly way: string;
  readonly forward: string;
  readonly backward: string;
  readonly worstBackward: string;
  readonly random: string;
  readonly wrong: number;
  readonly steps: number;
}

/** Latencies in milliseconds, median (95th percentile). */
export function summary(
  clip: string,
  way: string,
  forward: readonly Seen[],
  backward: readonly Seen[],
  random: readonly Seen[],
): Row {
  const all = [...forward, ...backward, ...random];
  const worst = Math.max(0, ...backward.map(({ took }) => took));
  return {
    clip: clip.replace(/^bench-/, ''),
    way,
    forward: latency(forward),
    backward: latency(backward),
    worstBackward: backward.length > 0 ? worst.toFixed(0) : '–',
    random: latency(random),
    wrong: all.filter(({ frame, number }) => frame !== number).length,
    steps: all.length,
  };
}

function latency(seen: readonly Seen[]): string {
  if (seen.length === 0) return '–';
  const sorted = seen.map(({ took }) => took).sort((a, b) => a - b);
  const at = (share: number): string => (sorted[Math.floor((sorted.length - 1) * share)] ?? 0).toFixed(0);
  return `${at(0.5)} (${at(0.95)})`;
}

const lineOf = (row: Row): string =>
  `| ${row.clip} | ${row.way} | ${row.forward} | ${row.backward} | ${row.worstBackward} | ${row.random} | ${row.wrong} | ${row.steps} |`;

/** Puts the latencies between their marks in docs/performance.md; what was measured of other clips stays. */
export function writeLatencies(rows: readonly Row[], machine: string): void {
  const measured = new Set(rows.map(({ clip }) => clip));
  const others = readSection('stepping', 'stepping.ts').filter((line) => {
    const clip = /^\| (\S+) \|/.exec(line)?.[1];
    return clip !== undefined && clip !== 'clip' && clip !== '---' && !measured.has(clip);
  });
  writeSection('stepping', 'stepping.ts', [
    '## Stepping',
    '',
    `Milliseconds from asking for a frame to having drawn it at stage size (1280 pixels wide), median (95th percentile). Measured on ${machine}. The last two columns compare the number read from each picture with the frame asked for.`,
    '',
    '| clip | way | forward | backward | slowest backward | random | wrong | steps |',
    '| --- | --- | --- | --- | --- | --- | --- | --- |',
    ...others,
    ...rows.map(lineOf),
  ]);
}

/** Puts the figures of the long walk between their marks in docs/performance.md. */
export function writeMemory(lines: readonly string[]): void {
  writeSection('stepping-memory', 'stepping.ts', [
    '## Memory over 10,000 steps',
    '',
    'A playhead wandering over the whole of a 1080p60 clip with groups of 250, going back and forth by 90 frames; budget 512 MB for pictures.',
    '',
    '| steps | wrong in the last 1,000 | pictures held, MB | window process, MB |',
    '| --- | --- | --- | --- |',
    ...lines,
  ]);
}
