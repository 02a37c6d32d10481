import { chromium } from '@playwright/test';
import { chromiumOptions } from '../../browser/harness/chromium';
import type { Seen } from '../../browser/harness/page';
import { serveHarness } from '../../browser/harness/serve';
import { jumpInTurn, medianOf, type Way } from './jumps-in-turn';
import { makeSteppingFilms } from './stepping-films';
import { readSection, writeSection } from '../write-section';

/** More jumps than the stepping bench makes, turn about. Run with tsx; names of clips as arguments. */
const count = 40;
const meanOf = (seen: readonly Seen[]): number => seen.reduce((sum, { took }) => sum + took, 0) / seen.length;

const server = await serveHarness();
const browser = await chromium.launch(chromiumOptions());
try {
  const lines: string[] = [];
  const films = await makeSteppingFilms(process.argv.slice(2), server);
  for (const film of films) {
    const { seen, ratio } = await jumpInTurn(browser, server, film, count);
    const wrong = (who: Way): number => seen[who].filter(({ frame, number }) => frame !== number).length;
    const cell = (who: Way): string => `${medianOf(seen[who]).toFixed(0)} / ${meanOf(seen[who]).toFixed(0)}`;
    lines.push(
      `| ${film.name} | ${cell('source')} | ${cell('element')} | ${cell('call')} | ${ratio.toFixed(2)} | ${wrong('source')}, ${wrong('element')}, ${wrong('call')} of ${count} |`,
    );
    console.log(lines.at(-1));
  }
  const measured = new Set(films.map(({ name }) => name));
  const others = readSection('jumps', 'film/jumps.ts').filter((line) => {
    const name = /^\| (\S+) \|/.exec(line)?.[1];
    return name !== undefined && name !== 'clip' && name !== '---' && !measured.has(name);
  });
  writeSection('jumps', 'film/jumps.ts', [
    '## Jumps, turn about',
    '',
    `Milliseconds to a random frame, median / mean of ${count}; the three ways take turns, so that what else the machine does hits all alike. Each jump of the frame source finds nothing held but the frame it starts from. Our target is a ratio of at most 1.2 to the faster rival.`,
    '',
    '| clip | frame source | video element | ffmpeg | ratio of medians | wrong |',
    '| --- | --- | --- | --- | --- | --- |',
    ...others,
    ...lines,
  ]);
} finally {
  await browser.close();
  await server.close();
}
