import { archivesUnderFire } from '../../fuzz/archive-targets';
import { fileTargets } from '../../fuzz/file-targets';
import { hostUnderFire } from '../../fuzz/host-targets';
import { type FuzzReport, runFuzz } from '../../fuzz/run-fuzz';
import { windowUnderFire } from '../../fuzz/window-under-fire';
import { writeSection } from '../write-section';

/**
 * Fifty thousand hostile inputs and more; how many in all as the argument, then the first seed, then a word: only targets
 * whose name holds it are fed, and nothing is written down.
 */
const cases = Number(process.argv[2] ?? 50_000);
const seed = Number(process.argv[3] ?? 1);
const only = process.argv[4] ?? '';
const host = await hostUnderFire();
const zips = await archivesUnderFire();
const film = await windowUnderFire();
/** Zips, which wait for the disk, and film, which waits for the browser, are fed beside each other; their time and memory hold both. */
const lanes = [
  // first and alone: these are the processor's work
  [
    ...fileTargets.map((target) => ({ target, share: 0.06 })),
    ...host.targets.map((target) => ({ target, share: 0.26 })),
  ],
  // everything unpacked is flushed to the disk, and taken away again
  zips.targets.map((target) => ({ target, share: 0.025 })),
  // the tools start a program for every look
  film.targets.map((target, n) => ({ target, share: n === 0 ? 0.06 : 0.01 })),
];
const reports: FuzzReport[] = [];
let peakMb = 0;
const feed = async (lane: (typeof lanes)[number]): Promise<void> => {
  for (const { target, share } of lane) {
    if (!target.name.includes(only)) continue;
    const report = await runFuzz(target, Math.ceil(cases * share), seed);
    peakMb = Math.max(peakMb, process.memoryUsage().rss / 1e6);
    reports.push(report);
    console.log(
      `${report.target}: ${report.cases} cases, slowest ${report.slowestMs.toFixed(0)} ms, ${report.found.length} found`,
    );
    for (const found of report.found.slice(0, 5)) console.log(found);
  }
};
const [first = [], ...others] = lanes;
await feed(first);
await Promise.all(others.map(feed));
await host.close();
await zips.close();
const windowMb = film.peakMb();
console.log(`the browser at most ${windowMb.toFixed(0)} MB`);
await film.close();
if (only === '')
  writeSection('fuzz', 'safety/fuzz.ts', [
    '## Hostile input',
    '',
    `Mangled files, operations, requests, bundles, back-ups and film (every kind of container, read in a real window and by the host's tools), seeds from ${seed}. Found: an error that is not in the contract, a crash, a number that is not finite, something outside the library touched or told, something left behind, more than 5 s, or more than 400 MB taken in the process by one case. Most memory: the process ${peakMb.toFixed(0)} MB, all of the browser ${windowMb.toFixed(0)} MB.`,
    '',
    '| what is fed | cases | found | slowest, ms |',
    '| --- | --- | --- | --- |',
    ...reports.map(
      (each) => `| ${each.target} | ${each.cases} | ${each.found.length} | ${each.slowestMs.toFixed(0)} |`,
    ),
  ]);
process.exitCode = reports.some(({ found }) => found.length > 0) ? 1 : 0;
