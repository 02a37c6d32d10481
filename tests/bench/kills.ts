import { type Kill, runKills, victims } from '../e2e/kills';
import { writeSection } from './write-section';

/** Two hundred kills of host, page and browser during heavy marking; how many as the argument, then the seed. */
const count = Number(process.argv[2] ?? 200);
const seed = Number(process.argv[3] ?? 1);
const kills = await runKills(count, seed, (kill) => console.log(JSON.stringify(kill)));
const row = (name: string, of: readonly Kill[]): string => {
  const lost = of.map(({ lostSeconds }) => lostSeconds);
  return `| ${name} | ${of.length} | ${of.filter(({ faults }) => faults.length > 0).length} | ${Math.max(0, ...lost).toFixed(2)} |`;
};
writeSection('kills', 'kills.ts', [
  '## Kills during heavy marking',
  '',
  'SIGKILL of the host or the browser, or a crash of the page, at a random moment of stepping, marking, moving, removing, undoing and saving stills. A broken promise is a file that does not open, a mark lost that was on the screen for more than two seconds, or half a picture under its final name.',
  '',
  '| killed | times | broken promises | oldest change lost, s |',
  '| --- | --- | --- | --- |',
  ...victims.map((victim) =>
    row(
      victim,
      kills.filter((kill) => kill.victim === victim),
    ),
  ),
]);
const broken = kills.flatMap(({ faults }) => faults);
console.log(broken.length === 0 ? 'every promise kept' : broken.join('\n'));
process.exitCode = broken.length === 0 ? 0 : 1;
