import { runSoak, type SoakSample } from '../../e2e/soak';
import { writeSection } from '../write-section';

/** Half an hour of scripted review; minutes as the argument. */
const minutes = Number(process.argv[2] ?? 30);
const { samples, actions, bugs } = await runSoak(
  { seconds: minutes * 60, followEvery: 3, kindsEvery: 12 },
  (each) => console.log(JSON.stringify(each)),
);
// the first rounds load each screen's program, its letters and OpenCV
const settled = samples.slice(4);
const row = (each: SoakSample): string =>
  `| ${(each.seconds / 60).toFixed(1)} | ${each.round + 1} | ${each.heapMb.toFixed(1)} | ${each.nodes} | ${each.listeners} | ${each.openFrames} | ${each.workers} | ${each.hostMb.toFixed(0)} | ${each.hostHandles} |`;
const shown = samples.filter(
  (_, place) => place === samples.length - 1 || place % Math.max(1, Math.floor(samples.length / 12)) === 0,
);

/** Growth in an hour by the least squares line through all settled samples, or some of them. */
function growth(of: (each: SoakSample) => number, among: readonly SoakSample[] = settled): number {
  const hours = among.map(({ seconds }) => seconds / 3600);
  const middle = hours.reduce((sum, each) => sum + each, 0) / hours.length;
  const mean = among.reduce((sum, each) => sum + of(each), 0) / among.length;
  const top = among.reduce((sum, each, n) => sum + ((hours[n] ?? 0) - middle) * (of(each) - mean), 0);
  return top / hours.reduce((sum, each) => sum + (each - middle) ** 2, 0);
}

const looked = samples.filter(({ kinds }) => kinds !== null);
const kindsGrowth = (of: (kinds: NonNullable<SoakSample['kinds']>) => number): string =>
  growth((each) => (each.kinds ? of(each.kinds) : 0), looked).toFixed(1);

writeSection('soak', 'safety/soak.ts', [
  '## Half an hour of review',
  '',
  `${samples.length} rounds, ${actions} actions, in ${((samples.at(-1)?.seconds ?? 0) / 60).toFixed(1)} minutes: open a swim, step forth and back, mark, undo, play, save a still, every third round follow points and take it back, then every other screen. Sampled on the shelf after each round, garbage collected first. Bugs met: ${bugs.length}.`,
  '',
  '| minutes | rounds | window heap, MB | nodes | listeners | pictures not closed | workers | host memory, MB | host handles |',
  '| --- | --- | --- | --- | --- | --- | --- | --- | --- |',
  ...shown.map(row),
  '',
  `Growth an hour by a line through the rounds after the fourth: heap ${growth(({ heapMb }) => heapMb).toFixed(1)} MB, nodes ${growth(({ nodes }) => nodes).toFixed(0)}, listeners ${growth(({ listeners }) => listeners).toFixed(0)}, host memory ${growth(({ hostMb }) => hostMb).toFixed(1)} MB, handles ${growth(({ hostHandles }) => hostHandles).toFixed(1)}.`,
  '',
  'What the window’s heap holds, every twelfth round (the same swim, followed again): what the engine compiled, what the browser keeps for the page (its own measurements and, as a test looks on, its record of what was loaded), and all of the app’s objects.',
  '',
  '| minutes | rounds | compiled, MB | the browser’s, MB | the app’s, MB |',
  '| --- | --- | --- | --- | --- |',
  ...looked.map(({ seconds, round, kinds }) =>
    kinds
      ? `| ${(seconds / 60).toFixed(1)} | ${round + 1} | ${kinds.compiledMb.toFixed(2)} | ${kinds.browserMb.toFixed(2)} | ${kinds.ownMb.toFixed(2)} |`
      : '',
  ),
  '',
  `Growth an hour: compiled ${kindsGrowth((each) => each.compiledMb)} MB, the browser’s ${kindsGrowth((each) => each.browserMb)} MB, the app’s ${kindsGrowth((each) => each.ownMb)} MB.`,
]);
for (const bug of bugs) console.log(bug);
process.exitCode = bugs.length === 0 ? 0 : 1;
