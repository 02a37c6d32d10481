import { chromium, type Page } from '@playwright/test';
import { chromiumOptions } from '../browser/harness/chromium';
import { makeClip } from '../browser/harness/make-clips';
import type { Seen } from '../browser/harness/page';
import { serveHarness } from '../browser/harness/serve';
import { callFfmpeg } from './call-ffmpeg';
import { jumps } from './jump-list';
import { steppingClips } from './stepping-clips';
import { readSection, writeSection } from './write-section';

/**
 * Jumps to random frames, turn about: frame source, video element, ffmpeg started for the frame. What else the machine does
 * hits all three alike. The source begins with nothing held and may keep what it holds, as in use. Run with tsx; names of
 * clips as arguments.
 */
const count = 40;
const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
const meanOf = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

const server = await serveHarness();
const browser = await chromium.launch(chromiumOptions());
async function openPage(): Promise<Page> {
  const page = await browser.newPage();
  await page.goto(server.address);
  await page.waitForFunction(() => 'harness' in window);
  return page;
}
try {
  const wanted = process.argv.slice(2);
  const lines: string[] = [];
  const measured = new Set<string>();
  for (const [key, clip] of Object.entries(steppingClips)) {
    if (wanted.length > 0 && !wanted.includes(key)) continue;
    const path = await makeClip(clip);
    if (!path) throw new Error('No ffmpeg here to make the clips with');
    const [ours, element] = [await openPage(), await openPage()];
    await ours.evaluate((address) => window.harness.open(address), server.clip(path));
    await element.evaluate((address) => window.harness.openElement(address), server.clip(path));
    const seen: Record<'source' | 'element' | 'call', Seen[]> = { source: [], element: [], call: [] };
    for (const frame of jumps(count, clip.pictures)) {
      seen.source.push(...(await ours.evaluate((f) => window.harness.walk([f], 0, 0, true), frame)));
      seen.element.push(
        ...(await element.evaluate(([time, f]) => window.harness.seekElement([time], [f], 15_000), [
          (frame + 0.5) / clip.rate,
          frame,
        ] as const)),
      );
      const call = await callFfmpeg(path, frame, clip.rate);
      if (call) seen.call.push(call);
    }
    await ours.close();
    await element.close();
    const times = (who: keyof typeof seen): number[] => seen[who].map(({ took }) => took);
    const wrong = (who: keyof typeof seen): number =>
      seen[who].filter(({ frame, number }) => frame !== number).length;
    const best = Math.min(median(times('element')), median(times('call')));
    const cell = (who: keyof typeof seen): string =>
      `${median(times(who)).toFixed(0)} / ${meanOf(times(who)).toFixed(0)}`;
    const name = clip.name.replace(/^bench-/, '');
    measured.add(name);
    lines.push(
      `| ${name} | ${cell('source')} | ${cell('element')} | ${cell('call')} | ${(median(times('source')) / best).toFixed(2)} | ${wrong('source')}, ${wrong('element')}, ${wrong('call')} of ${count} |`,
    );
    console.log(lines.at(-1));
  }
  const others = readSection('jumps', 'jumps.ts').filter((line) => {
    const name = /^\| (\S+) \|/.exec(line)?.[1];
    return name !== undefined && name !== 'clip' && name !== '---' && !measured.has(name);
  });
  writeSection('jumps', 'jumps.ts', [
    '## Jumps, turn about',
    '',
    `Milliseconds to a random frame, median / mean of ${count}; the three ways take turns, so that what else the machine does hits all alike. Our target is a ratio of at most 1.2 to the faster rival.`,
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
