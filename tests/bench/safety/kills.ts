import { activities } from '../../e2e/kill-activities';
import type { Made } from '../../e2e/kill-checks';
import { type Kill, runKills, victims } from '../../e2e/kills';
import { writeSection } from '../write-section';

/**
 * Two hundred kills of host, page and browser during every work; how many as the argument, then the seed, then one work
 * only, of which nothing is written down.
 */
const count = Number(process.argv[2] ?? 200);
const seed = Number(process.argv[3] ?? 1);
const only = activities.find((each) => each === process.argv[4]);
const made: Made = { stills: 0, videos: 0, copies: 0 };
const began = Date.now();
const kills = await runKills(count, seed, (kill) => console.log(JSON.stringify(kill)), made, only && [only]);
const row = (name: string, of: readonly Kill[]): string => {
  const worst = (lost: readonly number[]): string => Math.max(0, ...lost).toFixed(2);
  return `| ${[
    name,
    of.length,
    of.filter(({ faults }) => faults.length > 0).length,
    worst(of.map(({ lostSeconds }) => lostSeconds)),
    worst(of.map(({ lostAfterReopening }) => lostAfterReopening)),
  ].join(' | ')} |`;
};
if (count >= 100 && !only)
  writeSection('kills', 'safety/kills.ts', [
    '## Kills during work',
    '',
    `SIGKILL of the host or of the browser, or a crash of the page, at a random moment (seed ${seed}, ${((Date.now() - began) / 60_000).toFixed(0)} minutes in all, one library and one browser profile throughout). Then everything is opened again. A broken promise is a file that does not open, a mark lost that was on the screen for more than two seconds (from the disk, or from the next window), a next window that does not come to “saved” by itself or differs from the disk, or a still, video or working copy under its final name that does not decode to its end. Decoded whole on the way: ${made.stills} stills, ${made.videos} videos, ${made.copies} working copies.`,
    '',
    '| killed | times | broken promises | oldest change not on disk, s | not in the next window, s |',
    '| --- | --- | --- | --- | --- |',
    ...victims.map((victim) =>
      row(
        victim,
        kills.filter((kill) => kill.victim === victim),
      ),
    ),
    '',
    '| during | times | broken promises | oldest change not on disk, s | not in the next window, s |',
    '| --- | --- | --- | --- | --- |',
    ...activities.map((activity) =>
      row(
        activity,
        kills.filter((kill) => kill.activity === activity),
      ),
    ),
  ]);
const broken = kills.flatMap(({ victim, activity, faults }) =>
  faults.map((fault) => `${victim}, ${activity}: ${fault}`),
);
console.log(broken.length === 0 ? 'every promise kept' : broken.join('\n'));
process.exitCode = broken.length === 0 ? 0 : 1;
