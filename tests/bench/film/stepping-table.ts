import type { Seen } from '../../browser/harness/page';
import type { PictureCosts } from '../../browser/harness/picture-costs';
import { readSection, writeSection } from '../write-section';

/** One way of stepping over one clip. */
export interface Row {
  readonly clip: string;
  readonly way: string;
  readonly forward: string;
  readonly backward: string;
  readonly worstBackward: string;
  readonly random: string;
  /** Median of jumps against that of the faster rival. */
  readonly ratio: string;
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
  ratio: number | null = null,
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
    ratio: ratio === null ? '' : ratio.toFixed(2),
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
  `| ${row.clip} | ${row.way} | ${row.forward} | ${row.backward} | ${row.worstBackward} | ${row.random} | ${row.ratio} | ${row.wrong} | ${row.steps} |`;

/** Lines of a table already written that are about other clips. */
const linesOfOthers = (section: string, measured: ReadonlySet<string>): string[] =>
  readSection(section, 'film/stepping.ts').filter((line) => {
    const clip = /^\| (\S+) \|/.exec(line)?.[1];
    return clip !== undefined && clip !== 'clip' && clip !== '---' && !measured.has(clip);
  });

/** Wrong pictures and steps of all rows of the frame source, from the last two columns. */
function wrongOf(lines: readonly string[]): string {
  let [wrong, steps] = [0, 0];
  for (const line of lines) {
    if (!line.includes('| frame source')) continue;
    const cells = line.split('|').map((cell) => Number(cell.trim()));
    wrong += cells.at(-3) ?? 0;
    steps += cells.at(-2) ?? 0;
  }
  return `Frame source, all rows together: ${wrong} wrong of ${steps} pictures.`;
}

/** Puts the latencies between their marks in docs/performance-tables.md; what was measured of other clips stays. */
export function writeLatencies(rows: readonly Row[], machine: string): void {
  const lines = [...linesOfOthers('stepping', new Set(rows.map(({ clip }) => clip))), ...rows.map(lineOf)];
  writeSection('stepping', 'film/stepping.ts', [
    '## Stepping',
    '',
    `Milliseconds from asking for a frame to having drawn it at stage size (1280 pixels wide), median (95th percentile). Measured on ${machine}. The last two columns compare the number read from each picture with the frame asked for. Jumps of the three ways are made turn about, ours with nothing held but the frame it starts from, and \`ratio\` is the median of ours to that of the faster rival (our target: at most 1.2). Unpaced: each step is asked for as soon as the window has done what else was waiting, as between two keys. A second both ways: of where the coach rests, once that is decoded. A working copy is the one the app's own job makes, stands in for its clip, and is also what its rivals read.`,
    '',
    '| clip | way | forward | backward | slowest backward | random | ratio | wrong | steps |',
    '| --- | --- | --- | --- | --- | --- | --- | --- | --- |',
    ...lines,
    '',
    wrongOf(lines),
  ]);
}

/** What each part of the way to the screen takes for a clip. */
export interface Costs extends PictureCosts {
  readonly clip: string;
  /** Milliseconds of rest until a second both ways was decoded, at each place. */
  readonly waits: readonly number[];
  /** Held at the end of the walks. */
  readonly heldBytes: number;
  /** Programs that wanted a processor, over the last minute. */
  readonly load: number;
}

/** Puts what limits each clip between its marks in docs/performance-tables.md. */
export function writeCosts(costs: readonly Costs[]): void {
  const cell = (value: number | null): string => (value === null ? '–' : value.toFixed(1));
  writeSection('stepping-costs', 'film/stepping.ts', [
    '## What a picture costs',
    '',
    'Milliseconds a picture of each part of the way to the screen, by itself: decoding straight on with nothing else to do, copying it out of the decoder, making half size of it, drawing it whole or at half size (1280 pixels wide). Decoding runs beside the others, in a thread of its own; copying and drawing are the window’s. Then the seconds of rest until a second both ways was decoded, at the slowest of three places, the pictures held at the end of those walks, and the load of the machine then (the bench itself is about 2 of it).',
    '',
    '| clip | decode | copy | halve | draw whole | draw half | a second both ways after, s | held, MB | load |',
    '| --- | --- | --- | --- | --- | --- | --- | --- | --- |',
    ...linesOfOthers('stepping-costs', new Set(costs.map(({ clip }) => clip))),
    ...costs.map(
      ({ clip, decode, copy, halve, draw, drawHalf, waits, heldBytes, load }) =>
        `| ${clip} | ${cell(decode)} | ${cell(copy)} | ${cell(halve)} | ${cell(draw)} | ${cell(drawHalf)} | ${(Math.max(...waits) / 1000).toFixed(1)} | ${Math.round(heldBytes / 2 ** 20)} | ${load.toFixed(0)} |`,
    ),
  ]);
}

/** Puts the figures of the long walk between their marks in docs/performance-tables.md. */
export function writeMemory(lines: readonly string[]): void {
  writeSection('stepping-memory', 'film/stepping.ts', [
    '## Memory over 10,000 steps',
    '',
    'A playhead wandering over the whole of a 1080p60 clip with groups of 250, going back and forth by 90 frames; budget 512 MB for pictures.',
    '',
    '| steps | wrong in the last 1,000 | pictures held, MB | window process, MB |',
    '| --- | --- | --- | --- |',
    ...lines,
  ]);
}
