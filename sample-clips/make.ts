import { mkdir, rm } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { makeClip } from './make-clip';
import { writeMonth } from './make-month';
import { makeTruth, writeTruth } from './make-truth';
import { writeSquad, writeSwim } from './make-swim';
import { scenarios } from './scenario';

/** Draws every sample clip, writes its truth, and lays the sample library. */
const here = fileURLToPath(new URL('.', import.meta.url));
await rm(`${here}library`, { recursive: true, force: true });
await mkdir(`${here}truth`, { recursive: true });
for (const scenario of scenarios) {
  const folder = `${here}library/swims/${scenario.id}`;
  await mkdir(folder, { recursive: true });
  const clip = await makeClip(scenario, folder);
  const truth = makeTruth(scenario, clip);
  await writeTruth(`${here}truth/${scenario.id}.json`, truth);
  await writeSwim(folder, scenario, clip, truth);
  console.log(`${scenario.file}: ${clip.table.starts.length} pictures, ${Math.round(clip.bytes / 1024)} KiB`);
}
await writeSquad(`${here}library/squad.json`);
await writeMonth(`${here}library`);
