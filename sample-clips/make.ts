import { mkdir, rm } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { makeClip } from './make-clip';
import { sampleTrial } from './make-month';
import { makeTruth, writeTruth } from './make-truth';
import { writeSquad, writeSwim } from './make-swim';
import { monthScenarios } from './month-scenarios';
import { monthTrials } from './month-trials';
import { type Scenario, scenarios } from './scenario';
import { writePractices, writeTrials } from './write-month';

/**
 * Draws the sample clips and lays the two sample libraries: `library` with the first seven swims and the month's
 * practices, `month` with the swims and trials that come beside them. With `month` as its argument, only the latter.
 */
const here = fileURLToPath(new URL('.', import.meta.url));
const draw = async (scenario: Scenario, library: string, withTruth: boolean): Promise<void> => {
  const folder = `${here}${library}/swims/${scenario.id}`;
  await mkdir(folder, { recursive: true });
  const clip = await makeClip(scenario, folder);
  const truth = makeTruth(scenario, clip);
  if (withTruth) await writeTruth(`${here}truth/${scenario.id}.json`, truth);
  await writeSwim(folder, scenario, clip, truth);
  console.log(`${scenario.file}: ${clip.table.starts.length} pictures, ${Math.round(clip.bytes / 1024)} KiB`);
};
if (process.argv[2] !== 'month') {
  await rm(`${here}library`, { recursive: true, force: true });
  await mkdir(`${here}truth`, { recursive: true });
  for (const scenario of scenarios) await draw(scenario, 'library', true);
  await writeSquad(`${here}library/squad.json`);
  await writePractices(`${here}library`);
  await writeTrials(`${here}library`, [sampleTrial]);
}
await rm(`${here}month`, { recursive: true, force: true });
// their truth can be had from the scenarios at any time
for (const scenario of monthScenarios) await draw(scenario, 'month', false);
await writeTrials(`${here}month`, monthTrials);
